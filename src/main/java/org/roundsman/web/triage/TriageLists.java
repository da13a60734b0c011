package org.roundsman.web.triage;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Urgency;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.DeviceStates;
import org.roundsman.readings.FleetBoard;
import org.roundsman.readings.FleetTotals;
import org.roundsman.web.page.Trouble;
import org.roundsman.web.page.Words;

/** Asks for the list of alarms. */
@ApplicationScoped
class TriageLists {

    private static final Duration RECENT = Duration.ofHours(1);

    /** More lines than that nobody reads; the rest comes up as the first ones go. */
    private static final int MOST = 60;

    /** Such an alarm waits for its cause; shown as one of its own until it is known. */
    private static final Predicate<OpenAlarm> CAUSE = alarm -> alarm.causedBy().isEmpty();

    private final AlarmBook book;
    private final FleetBoard fleet;
    private final DeviceStates states;
    private final Trouble trouble;
    private final Clock clock;

    TriageLists(AlarmBook book, FleetBoard fleet, DeviceStates states, Trouble trouble, Clock clock) {
        this.book = book;
        this.fleet = fleet;
        this.states = states;
        this.trouble = trouble;
        this.clock = clock;
    }

    /** The causes that need somebody, the most urgent first. */
    List<OpenAlarm> needy(CustomerScope scope) {
        return needy(causes(scope));
    }

    private static List<OpenAlarm> needy(List<OpenAlarm> causes) {
        return Urgency.sorted(causes.stream()
                .filter(alarm -> !shelved(alarm) && !alarm.planned())
                .toList());
    }

    private List<OpenAlarm> causes(CustomerScope scope) {
        return book.open(scope).stream()
                .filter(CAUSE)
                .filter(alarm -> alarm.operator() != OperatorState.CLOSED)
                .toList();
    }

    private static boolean shelved(OpenAlarm alarm) {
        return alarm.operator() == OperatorState.SHELVED;
    }

    /**
     * The list.
     *
     * @param chosen id of the alarm that is shown beside it, 0 for none
     */
    TriageList list(Reader reader, long chosen) {
        Instant now = clock.instant();
        List<OpenAlarm> causes = causes(reader.scope());
        List<OpenAlarm> needy = needy(causes);
        Lines lines = new Lines(reader, now, chosen);
        return new TriageList(
                lines.ranked(needy.subList(0, Math.min(MOST, needy.size()))),
                needy.size() > MOST
                        ? Words.many(needy.size() - MOST, "less urgent cause is", "less urgent causes are")
                                + " left out."
                        : "",
                lines.plain(causes.stream().filter(TriageLists::shelved)),
                lines.plain(causes.stream().filter(alarm -> alarm.planned() && !shelved(alarm))),
                lines.plain(book.recentlyCleared(reader.scope(), now.minus(RECENT)).stream()
                        .filter(CAUSE)
                        .sorted(Comparator.comparing(
                                        (OpenAlarm alarm) -> alarm.clearedAt().orElse(now))
                                .reversed())),
                quiet(reader, needy.isEmpty(), now),
                trouble.behind().orElse(""),
                chosen);
    }

    private record Lines(Reader reader, Instant now, long chosen) {

        List<TriageLine> ranked(List<OpenAlarm> alarms) {
            List<TriageLine> lines = new ArrayList<>();
            for (int i = 0; i < alarms.size(); i++) {
                String above = i + 1 < alarms.size()
                        ? Urgency.between(alarms.get(i), alarms.get(i + 1)).word()
                        : "";
                lines.add(line(alarms.get(i), above));
            }
            return lines;
        }

        List<TriageLine> plain(java.util.stream.Stream<OpenAlarm> alarms) {
            return alarms.map(alarm -> line(alarm, "")).toList();
        }

        private TriageLine line(OpenAlarm alarm, String above) {
            return TriageLine.of(alarm, reader, now, above, alarm.id() == chosen);
        }
    }

    private TriageList.Quiet quiet(Reader reader, boolean empty, Instant now) {
        return empty
                ? new TriageList.Quiet(
                        reader.acts() ? "Nothing needs you." : "Nothing is wrong.", answering(reader.scope(), now))
                : new TriageList.Quiet("", "");
    }

    /** {@code 209 of 212 access points are answering, 1 of 6 switches and gateways in trouble; the last round began 4 s ago.} */
    private String answering(CustomerScope scope, Instant now) {
        FleetTotals totals = fleet.totals(scope);
        String words = totals.answering() + " of " + Words.many(totals.accessPoints(), "access point", "access points")
                + (totals.answering() == 1 ? " is" : " are") + " answering";
        if (totals.otherTrouble() > 0) {
            words += ", " + totals.otherTrouble() + " of "
                    + Words.many(totals.otherDevices(), "switch or gateway", "switches and gateways") + " in trouble";
        }
        return words
                + states.lastRound(scope)
                        .map(at -> "; the last round began " + seconds(Duration.between(at, now)) + " ago.")
                        .orElse("; no round has been made yet.");
    }

    private static String seconds(Duration length) {
        long seconds = Math.max(0, length.toSeconds());
        return seconds < 60 ? seconds + " s" : Words.length(length);
    }
}
