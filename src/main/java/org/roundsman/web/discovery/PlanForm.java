package org.roundsman.web.discovery;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.discovery.SweepPlan;

/** What the form of a sweep sent, as text, to be shown again when something in it is wrong. */
record PlanForm(
        @RestForm String ranges,
        @RestForm String ports,
        @RestForm String all,
        @RestForm List<String> credential,
        @RestForm String act) {

    static PlanForm of(SweepPlan plan) {
        return new PlanForm(
                plan.ranges(),
                plan.ports().stream().map(String::valueOf).collect(Collectors.joining(", ")),
                plan.all() ? "yes" : "",
                plan.credentials().stream().map(String::valueOf).toList(),
                "");
    }

    public boolean isAll() {
        return "yes".equals(all);
    }

    boolean starts() {
        return "start".equals(act);
    }

    boolean chose(long id) {
        return credential != null && credential.contains(String.valueOf(id));
    }

    /** What it means, and what of it cannot be read. */
    record Read(SweepPlan plan, Map<String, String> faults) {}

    Read read() {
        Map<String, String> faults = new LinkedHashMap<>();
        List<Integer> numbers = numbers(ports, faults);
        List<Long> ids = credential == null
                ? List.of()
                : credential.stream()
                        .filter(id -> id.matches("\\d{1,18}"))
                        .map(Long::valueOf)
                        .toList();
        return new Read(new SweepPlan(ranges == null ? "" : ranges, numbers, isAll(), ids), faults);
    }

    static List<Integer> numbers(String text, Map<String, String> faults) {
        List<Integer> numbers = new ArrayList<>();
        for (String part : (text == null ? "" : text).split("[,\\s]+")) {
            if (part.matches("\\d{1,5}")) {
                numbers.add(Integer.valueOf(part));
            } else if (!part.isEmpty()) {
                faults.put("ports", "“" + part + "” is no port; write numbers such as 161 or 161, 1161");
            }
        }
        return numbers;
    }
}
