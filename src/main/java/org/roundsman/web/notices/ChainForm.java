package org.roundsman.web.notices;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.EscalationChain;
import org.roundsman.notices.NoticeRejected;

/** What the form of an escalation chain sent; steps that name nobody are left out. */
record ChainForm(
        @RestForm String customer,
        @RestForm String severity,
        @RestForm String minutes,
        @RestForm String serviceHours,
        @RestForm List<String> step1,
        @RestForm List<String> step2,
        @RestForm List<String> step3,
        @RestForm List<String> step4,
        @RestForm List<String> step5) {

    static ChainForm blank() {
        return new ChainForm(
                "", Severity.MAJOR.word(), "15", "", List.of(), List.of(), List.of(), List.of(), List.of());
    }

    public boolean inServiceHours() {
        return "yes".equals(serviceHours);
    }

    public boolean stands(Integer step, Long account) {
        List<String> chosen = steps().get(step - 1);
        return chosen != null && chosen.contains(String.valueOf(account));
    }

    private List<List<String>> steps() {
        return Arrays.asList(step1, step2, step3, step4, step5);
    }

    /**
     * @throws NoticeRejected naming the fields that cannot be read
     */
    EscalationChain chain() {
        Map<String, String> faults = new LinkedHashMap<>();
        Optional<Long> of = text(customer).isEmpty() ? Optional.empty() : Optional.of(id(customer, "customer", faults));
        Optional<Severity> from = Arrays.stream(Severity.values())
                .filter(one -> one.word().equals(text(severity)))
                .findFirst();
        if (from.isEmpty()) {
            faults.put("severity", "Choose from the list.");
        }
        long pause = id(minutes, "minutes", faults);
        List<Set<Long>> chosen = new ArrayList<>();
        for (List<String> step : steps()) {
            if (step != null && !step.isEmpty()) {
                chosen.add(Set.copyOf(
                        step.stream().map(one -> id(one, "steps", faults)).toList()));
            }
        }
        if (!faults.isEmpty()) {
            throw new NoticeRejected(faults);
        }
        int whole = (int) Math.max(0, Math.min(Integer.MAX_VALUE, pause));
        return new EscalationChain(0, of, from.get(), whole, inServiceHours(), chosen);
    }

    private static long id(String text, String field, Map<String, String> faults) {
        try {
            return Long.parseLong(text(text));
        } catch (NumberFormatException e) {
            faults.put(field, "This must be a whole number.");
            return 0;
        }
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }
}
