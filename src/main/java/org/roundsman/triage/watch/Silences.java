package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.LongFunction;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.store.Fleet;

/**
 * The silence that explains what rules raise of a device: one that goes on, or one that was over when its restart came to
 * light. Follows from stored alarms alone. For one pass.
 */
final class Silences {

    /** Uptimes are told in whole seconds at best, and a round takes some. */
    private static final Duration SLACK = Duration.ofSeconds(15);

    /** What explains a silence is mostly one step away; more than that would be a circle. */
    private static final int STEPS = 8;

    /** With these nothing behind the device was reached: it may have had no power either. */
    private static final Set<CauseKind> TAKES_DOWN = Set.of(
            CauseKind.SWITCH_LOST,
            CauseKind.SWITCH_POWER,
            CauseKind.PORT_NOT_DELIVERING,
            CauseKind.NO_POWER_DRAWN,
            CauseKind.LINK_DOWN,
            CauseKind.UPLINK_LOST);

    private final Moment moment;
    private final LongFunction<SiteWiring> wirings;
    private final Map<Long, OpenAlarm> byId = new HashMap<>();
    private Optional<List<OpenAlarm>> over = Optional.empty();

    Silences(Moment moment, LongFunction<SiteWiring> wirings) {
        this.moment = moment;
        this.wirings = wirings;
    }

    /** The silence of a device that goes on: its own, or that of its whole site. */
    Optional<OpenAlarm> now(Fleet.Device device) {
        Optional<DeviceLook> look = moment.look(device.id());
        boolean lost = look.filter(DeviceLook::lost).isPresent();
        return moment.alarm(own(device.id()))
                .or(() -> moment.alarm(whole(device.siteId())).filter(site -> lost))
                .filter(silence ->
                        look.filter(seen -> seen.heardAfter(silence.began())).isEmpty());
    }

    /** The silence, over by now, within or at the end of which a device restarted: its own, or that of what it hangs on. */
    Optional<OpenAlarm> around(OpenAlarm alarm, Fleet.Device device) {
        Restart restart = Restart.of(alarm, moment);
        List<OpenAlarm> candidates = over().stream()
                .filter(silence -> silence.siteId().equals(OptionalLong.of(device.siteId())))
                .filter(silence -> holds(silence, restart, device))
                .toList();
        if (candidates.isEmpty()) {
            return Optional.empty();
        }
        return of(candidates, own(device.id())).or(() -> above(candidates, device));
    }

    /** The highest one that took down what hangs on it. */
    private Optional<OpenAlarm> above(List<OpenAlarm> candidates, Fleet.Device device) {
        List<AlarmKey> keys = new ArrayList<>();
        keys.add(whole(device.siteId()));
        List<TreeNode> path = wirings.apply(device.siteId()).tree().pathUp(device.id());
        for (int i = path.size() - 1; i > 0; i--) {
            keys.add(own(path.get(i).deviceId()));
        }
        return keys.stream()
                .flatMap(key -> of(candidates, key).stream())
                .filter(silence -> TAKES_DOWN.contains(silence.cause()))
                .findFirst();
    }

    private static Optional<OpenAlarm> of(List<OpenAlarm> candidates, AlarmKey key) {
        return candidates.stream().filter(silence -> silence.key().equals(key)).findFirst();
    }

    /**
     * A device may start again before its first unanswered round. What hangs on another starts after that one is back, and may
     * need as long as after any other cause.
     */
    private static boolean holds(OpenAlarm silence, Restart restart, Fleet.Device device) {
        Instant end = silence.clearedAt().orElseThrow();
        boolean itself = silence.key().equals(own(device.id()));
        return !restart.began().isBefore(silence.began().minus(device.interval()))
                && !restart.began().isAfter(end.plus(itself ? SLACK : EndedCause.STARTING))
                && !restart.known().isAfter(end.plus(EndedCause.STARTING));
    }

    /** What explains a silence, or the silence itself. */
    AlarmKey root(OpenAlarm silence) {
        OpenAlarm at = silence;
        for (int step = 0; step < STEPS && at.causedBy().isPresent(); step++) {
            Optional<OpenAlarm> above = alarm(at.causedBy().getAsLong());
            if (above.isEmpty()) {
                return at.key();
            }
            at = above.get();
        }
        return at.key();
    }

    /** An active alarm, or one of the silences that were looked up in this pass. */
    Optional<OpenAlarm> alarm(long id) {
        if (byId.isEmpty()) {
            over.ifPresent(cleared -> cleared.forEach(alarm -> byId.put(alarm.id(), alarm)));
            moment.active().values().forEach(alarm -> byId.put(alarm.id(), alarm));
        }
        return Optional.ofNullable(byId.get(id));
    }

    /** Silences that were over shortly before a restart came to light of which the cause is still open. Read once in a pass. */
    private List<OpenAlarm> over() {
        if (over.isEmpty()) {
            Instant since = moment.active().values().stream()
                    .filter(alarm -> alarm.key().type() == AlarmType.DEVICE_RESTARTED)
                    .filter(alarm -> !alarm.settled()
                            || moment.now().isBefore(Restart.of(alarm, moment).until()))
                    .map(alarm -> Restart.of(alarm, moment).known())
                    .min(Instant::compareTo)
                    .orElse(moment.now())
                    .minus(EndedCause.STARTING);
            over = Optional.of(moment.tools().book().recentlyCleared(CustomerScope.everyone(), since).stream()
                    .filter(alarm -> alarm.key().type() == AlarmType.DEVICE_SILENT
                            || alarm.key().type() == AlarmType.UPLINK_LOST)
                    .toList());
            byId.clear();
        }
        return over.get();
    }

    private static AlarmKey own(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    private static AlarmKey whole(long site) {
        return AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(site));
    }
}
