package org.roundsman.discovery;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.InputRejected;

/** What may be entered for a sweep. */
final class PlanCheck {

    private static final int MOST_PORTS = 4;

    private PlanCheck() {}

    /**
     * The number of addresses, each once for each port.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    static int check(SweepPlan plan, List<Credential> usable) {
        Map<String, String> faults = new LinkedHashMap<>();
        List<Integer> ports = plan.ports();
        boolean good = !ports.isEmpty()
                && ports.size() <= MOST_PORTS
                && ports.stream().distinct().count() == ports.size()
                && ports.stream().allMatch(port -> port >= 1 && port <= 65_535);
        if (!good) {
            faults.put("ports", "one to four different ports from 1 to 65535, such as 161");
        }
        int total = 0;
        try {
            total = AddressRanges.read(plan.ranges()).questions(Math.max(1, ports.size()));
        } catch (IllegalArgumentException e) {
            faults.put("ranges", e.getMessage());
        }
        if (usable.stream().noneMatch(c -> plan.tries(c.id))) {
            faults.put(
                    "credentials",
                    usable.isEmpty() ? "add SNMP credentials for this site first" : "choose at least one");
        }
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
        return total;
    }

    static FieldSet fields(SweepPlan plan) {
        return new FieldSet()
                .with("ranges", String.join(", ", AddressRanges.entries(plan.ranges())))
                .with("ports", plan.ports().stream().map(String::valueOf).collect(Collectors.joining(", ")))
                .with("credentials", plan.all() ? "all" : plan.credentials());
    }
}
