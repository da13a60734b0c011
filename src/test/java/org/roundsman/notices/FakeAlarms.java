package org.roundsman.notices;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;

/** Alarms in memory, as the alarm book would tell of them. All names are invented. */
final class FakeAlarms implements AlarmSource {

    /** One alarm; what tests set about it. */
    static final class Alarm {
        final long id;
        final long customer;
        long episode;
        Severity severity;
        Instant raised;
        Instant cleared;
        OperatorState operator = OperatorState.NONE;
        long causedBy;
        boolean planned;
        boolean settled = true;

        Alarm(long id, long customer) {
            this.id = id;
            this.customer = customer;
        }

        boolean active() {
            return raised != null && cleared == null;
        }

        OpenAlarm open() {
            return new OpenAlarm(
                    id,
                    episode,
                    AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(id)),
                    OptionalLong.of(customer),
                    "Saltmarsh Ferry Line",
                    OptionalLong.of(5),
                    "Pier North",
                    "Europe/Berlin",
                    "Gate AP " + id,
                    "mast",
                    severity,
                    raised.minusSeconds(180),
                    raised,
                    raised,
                    Optional.ofNullable(cleared),
                    "Silent for three rounds.",
                    operator,
                    "",
                    Optional.empty(),
                    "",
                    "",
                    CauseKind.DEVICE_LOST,
                    causedBy == 0 ? OptionalLong.empty() : OptionalLong.of(causedBy),
                    List.of("Port 7 of sw-2 delivers power."),
                    new Impact(OptionalInt.of(10), OptionalInt.of(30), OptionalInt.empty(), 1, true),
                    0,
                    planned,
                    settled);
        }
    }

    private final List<StatusChange> changes = new ArrayList<>();
    private final Map<Long, Alarm> alarms = new LinkedHashMap<>();
    private final Map<Long, OpenAlarm> past = new LinkedHashMap<>();
    private long episodes;

    Alarm alarm(long id, long customer) {
        return alarms.computeIfAbsent(id, none -> new Alarm(id, customer));
    }

    void raise(Alarm alarm, Severity severity, Instant at) {
        if (!alarm.active()) {
            alarm.episode = ++episodes;
            alarm.raised = at;
            alarm.cleared = null;
            alarm.operator = alarm.operator == OperatorState.SHELVED ? OperatorState.SHELVED : OperatorState.NONE;
        } else if (alarm.severity == severity) {
            return;
        }
        alarm.severity = severity;
        changes.add(new StatusChange(changes.size() + 1, alarm.id, alarm.episode, at, Optional.of(severity)));
    }

    void clear(Alarm alarm, Instant at) {
        if (alarm.active()) {
            alarm.cleared = at;
            past.put(alarm.episode, alarm.open());
            changes.add(new StatusChange(changes.size() + 1, alarm.id, alarm.episode, at, Optional.empty()));
        }
    }

    @Override
    public List<StatusChange> changesAfter(long changeId, int most) {
        return changes.stream().filter(c -> c.id() > changeId).limit(most).toList();
    }

    @Override
    public Collection<OpenAlarm> active() {
        return alarms.values().stream().filter(Alarm::active).map(Alarm::open).toList();
    }

    @Override
    public Optional<OpenAlarm> episode(long episodeId) {
        return Optional.ofNullable(past.get(episodeId));
    }

    @Override
    public List<OpenAlarm> clearedSince(Instant since) {
        return past.values().stream()
                .filter(alarm -> !alarm.clearedAt().get().isBefore(since))
                .toList();
    }
}
