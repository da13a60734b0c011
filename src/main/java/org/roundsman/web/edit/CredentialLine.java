package org.roundsman.web.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialWeakness;
import org.roundsman.web.page.Words;

/**
 * Credentials as a list shows them: never a secret.
 *
 * @param weak what is weak about them, in a few words each
 * @param users how many devices use them
 * @param first tried first among those of the same owner
 * @param last tried last among those of the same owner
 */
record CredentialLine(
        long id,
        String name,
        String kind,
        List<String> weak,
        String users,
        boolean unused,
        boolean first,
        boolean last) {

    /**
     * Those of one owner, in the order in which they are tried.
     *
     * @param key the owner's value in the form for new ones
     */
    record Group(String owner, String key, List<CredentialLine> lines) {}

    static List<Group> groups(List<Credential> credentials, Map<Long, Long> usage) {
        Map<String, List<Credential>> byOwner = new LinkedHashMap<>();
        credentials.forEach(c -> byOwner.computeIfAbsent(CredentialForm.ownerOf(c), key -> new ArrayList<>())
                .add(c));
        return byOwner.entrySet().stream()
                .map(group ->
                        new Group(group.getValue().get(0).owner(), group.getKey(), lines(group.getValue(), usage)))
                .toList();
    }

    private static List<CredentialLine> lines(List<Credential> group, Map<Long, Long> usage) {
        List<CredentialLine> lines = new ArrayList<>();
        for (int i = 0; i < group.size(); i++) {
            Credential c = group.get(i);
            long users = usage.getOrDefault(c.id, 0L);
            lines.add(new CredentialLine(
                    c.id,
                    c.name,
                    c.summary(),
                    c.weaknesses().stream().map(CredentialWeakness::word).toList(),
                    Words.many(users, "device", "devices"),
                    users == 0,
                    i == 0,
                    i == group.size() - 1));
        }
        return lines;
    }
}
