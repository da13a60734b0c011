package org.roundsman.warranty;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Signal;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;

/** Which sites have devices whose warranty ends within 30 days, as signals. Spares at no device raise nothing. */
final class EndingSoon {

    private static final int DAYS = 30;

    /** So many days a text names; of more it says how many devices. */
    private static final int MOST_DAYS = 8;

    private EndingSoon() {}

    /**
     * @param raised sites whose alarm is active
     */
    static List<Signal> signals(List<UnitCover> units, RuleSet rules, Set<Long> raised, Instant now) {
        SortedMap<Long, List<UnitCover>> sites = new TreeMap<>();
        units.stream()
                .filter(unit -> unit.deviceId().isPresent() && unit.siteId().isPresent())
                .filter(unit -> unit.status() == CoverStatus.ENDS_WITHIN_30)
                .forEach(unit -> sites.computeIfAbsent(unit.siteId().getAsLong(), made -> new ArrayList<>())
                        .add(unit));
        sites.entrySet()
                .removeIf(site -> !values(rules, site.getKey(), site.getValue()).enabled());
        List<Signal> signals = new ArrayList<>();
        sites.forEach((site, ending) -> signals.add(raise(site, ending, values(rules, site, ending), now)));
        raised.stream()
                .filter(site -> !sites.containsKey(site))
                .sorted()
                .forEach(site -> signals.add(new Signal.Clear(
                        key(site), now, "No warranty ends within 30 days here, or the rule is switched off.")));
        return signals;
    }

    static AlarmKey key(long siteId) {
        return AlarmKey.of(AlarmType.COVER_ENDING, Resource.site(siteId));
    }

    private static RuleValues values(RuleSet rules, long siteId, List<UnitCover> ending) {
        return rules.of(AlarmType.COVER_ENDING, RuleTarget.site(ending.get(0).customerId(), siteId));
    }

    private static Signal raise(long siteId, List<UnitCover> ending, RuleValues values, Instant now) {
        SortedMap<LocalDate, List<UnitCover>> days = new TreeMap<>(ending.stream()
                .collect(Collectors.groupingBy(one -> one.lastDay().orElseThrow())));
        Instant began = days.firstKey()
                .minusDays(DAYS)
                .atStartOfDay(ending.get(0).unit().zone())
                .toInstant();
        return new Signal.Raise(
                key(siteId), values.severity(), began.isAfter(now) ? now : began, now, text(ending, days));
    }

    /** {@code 3 access points: 2 on 2026-12-10, 1 on 2026-12-20}; {@code 10 access points on 2026-12-18}. */
    private static String text(List<UnitCover> ending, SortedMap<LocalDate, List<UnitCover>> days) {
        if (days.size() == 1) {
            return CalendarEvent.counted(ending) + " on " + days.firstKey();
        }
        String named = days.entrySet().stream()
                .limit(MOST_DAYS)
                .map(day -> day.getValue().size() + " on " + day.getKey())
                .collect(Collectors.joining(", "));
        int later = days.values().stream().skip(MOST_DAYS).mapToInt(List::size).sum();
        return CalendarEvent.counted(ending) + ": " + named + (later > 0 ? ", " + later + " later" : "");
    }
}
