package org.roundsman.fleet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * How the fleet is read, as far as credentials go.
 *
 * @param devices devices in all
 * @param weak devices that are read with credentials about which something is weak
 * @param risks what is weak, the worst first; only what occurs
 */
public record CredentialSummary(long devices, long weak, List<Risk> risks) {

    public CredentialSummary {
        risks = List.copyOf(risks);
    }

    /**
     * One weakness in numbers.
     *
     * @param credentials how many have it
     * @param devices how many devices are read with those
     */
    public record Risk(CredentialWeakness weakness, long credentials, long devices) {}

    /**
     * Counts.
     *
     * @param usage devices by id of the credentials
     */
    static CredentialSummary of(List<Credential> credentials, Map<Long, Long> usage) {
        List<Risk> risks = new ArrayList<>();
        Arrays.stream(CredentialWeakness.values()).forEach(weakness -> {
            List<Credential> having = credentials.stream()
                    .filter(c -> c.weaknesses().contains(weakness))
                    .toList();
            if (!having.isEmpty()) {
                risks.add(new Risk(weakness, having.size(), devices(having, usage)));
            }
        });
        List<Credential> weak =
                credentials.stream().filter(c -> !c.weaknesses().isEmpty()).toList();
        return new CredentialSummary(devices(credentials, usage), devices(weak, usage), risks);
    }

    private static long devices(List<Credential> credentials, Map<Long, Long> usage) {
        return credentials.stream().mapToLong(c -> usage.getOrDefault(c.id, 0L)).sum();
    }
}
