package org.roundsman.rules.past;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.TriedAlarm;
import org.roundsman.rules.store.DeviceTable.Watched;

/** Makes alarms out of signals, each from raise to clear. Used by one thread. */
final class Episodes {

    /** So many are listed; the others are counted. */
    private static final int MOST = 1_000;

    private static final int SPARE = 20_000;

    private final Instant from;
    private final Map<AlarmKey, Going> going = new HashMap<>();
    private final Map<Severity, Integer> bySeverity = new EnumMap<>(Severity.class);
    private final Deque<TriedAlarm> ended = new ArrayDeque<>();
    private int count;

    /** Alarms that ended before that time do not count. */
    Episodes(Instant from) {
        this.from = from;
    }

    private record Going(Instant began, Instant raised, Severity highest, String why) {
        Going raised(Signal.Raise again) {
            return again.severity().compareTo(highest) > 0
                    ? new Going(began, raised, again.severity(), again.text())
                    : this;
        }
    }

    void take(List<Signal> signals, Watched device) {
        for (Signal signal : signals) {
            if (signal instanceof Signal.Raise raise) {
                Going first = new Going(raise.began(), raise.at(), raise.severity(), raise.text());
                going.merge(raise.key(), first, (before, now) -> before.raised(raise));
            } else if (going.containsKey(signal.key())) {
                end(signal.key(), going.remove(signal.key()), Optional.of(signal.at()), device);
            }
        }
    }

    /** No more signals of that device: what goes on stays without an end. */
    void close(Watched device) {
        going.forEach((key, open) -> end(key, open, Optional.empty(), device));
        going.clear();
    }

    private void end(AlarmKey key, Going episode, Optional<Instant> end, Watched device) {
        if (end.isPresent() && end.get().isBefore(from)) {
            return;
        }
        count++;
        bySeverity.merge(episode.highest, 1, Integer::sum);
        if (ended.size() < SPARE) {
            ended.add(new TriedAlarm(
                    device.target().deviceId(),
                    device.name(),
                    device.site(),
                    device.customer(),
                    device.timeZone(),
                    (key.resource().part() + " " + key.qualifier()).strip(),
                    episode.began,
                    episode.raised,
                    end,
                    episode.highest,
                    episode.why));
        }
    }

    DryRun.Tally tally() {
        List<TriedAlarm> latest = new ArrayList<>(ended);
        latest.sort((a, b) -> b.raised().compareTo(a.raised()));
        return new DryRun.Tally(
                count, Map.copyOf(bySeverity), List.copyOf(latest.subList(0, Math.min(MOST, latest.size()))));
    }
}
