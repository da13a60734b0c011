package org.roundsman.firmware.watch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.fleet.DeviceKind;

/** The words of the alarm of a site. */
final class SiteTexts {

    private static final int MOST_REASONS = 3;

    private SiteTexts() {}

    /**
     * What is wrong at a site.
     *
     * @param all states of all devices of the site, of which at least one is withdrawn
     */
    static String of(List<FirmwareState> all) {
        List<FirmwareState> bad = all.stream().filter(SiteTexts::withdrawn).toList();
        List<DeviceKind> kinds =
                bad.stream().map(FirmwareState::kind).distinct().toList();
        boolean one = kinds.size() == 1;
        long of = all.stream()
                .filter(state -> !one || state.kind() == kinds.get(0))
                .count();
        String things = one ? kinds.get(0).word() : "device";
        String text = bad.size() + " of " + of + " " + plural(things, of) + (bad.size() == 1 ? " runs" : " run")
                + " firmware that should not run: " + reasons(bad);
        return text.matches("(?s).*[.!?…]") ? text : text + ".";
    }

    static boolean withdrawn(FirmwareState state) {
        return state.status() == FirmwareStatus.WITHDRAWN;
    }

    private static String plural(String word, long count) {
        return count == 1 ? word : word.endsWith("ch") ? word + "es" : word + "s";
    }

    private static String reasons(List<FirmwareState> bad) {
        Map<String, Long> counts =
                bad.stream().collect(Collectors.groupingBy(FirmwareState::reason, TreeMap::new, Collectors.counting()));
        if (counts.size() == 1) {
            return counts.keySet().iterator().next();
        }
        List<String> words = new ArrayList<>(counts.entrySet().stream()
                .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_REASONS)
                .map(reason -> reason.getValue() + " because " + reason.getKey())
                .toList());
        if (counts.size() > MOST_REASONS) {
            words.add("and " + (counts.size() - MOST_REASONS) + " other reasons");
        }
        return String.join("; ", words);
    }
}
