package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongFunction;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.store.Fleet;

/**
 * The alarm that a restart, or coming and going, comes from: a silence, the same of what the device hangs on, or a change of its
 * configuration. For one pass.
 */
final class Origins {

    /** What belongs together begins within that time: what starts last takes minutes (common practice). */
    private static final Duration TOGETHER = Duration.ofMinutes(10);

    private final Moment moment;
    private final Endings endings;
    private final LongFunction<SiteWiring> wirings;
    private final Silences silences;

    Origins(Moment moment, Endings endings, LongFunction<SiteWiring> wirings, Silences silences) {
        this.moment = moment;
        this.endings = endings;
        this.wirings = wirings;
        this.silences = silences;
    }

    /**
     * Where an alarm comes from.
     *
     * @param cause empty when it stands on its own
     * @param evidence a sentence with the cause
     */
    record Origin(Optional<AlarmKey> cause, List<String> evidence) {}

    Origin of(OpenAlarm alarm, Fleet.Device device) {
        List<String> evidence = new ArrayList<>();
        Optional<AlarmKey> cause = alarm.key().type() == AlarmType.FLAPPING
                ? above(alarm, device, evidence)
                : restart(alarm, device, evidence);
        return new Origin(cause, evidence);
    }

    /** Whether more may come to light of it yet. */
    boolean open(OpenAlarm alarm) {
        return moment.now().isBefore(Restart.of(alarm, moment).until());
    }

    /**
     * A restart that was explained once stays so, when its cause is over for long too. When restarts become more, so that their
     * alarm is more severe, that holds only where the same explains the last of them.
     */
    boolean stays(OpenAlarm alarm) {
        if (alarm.key().type() != AlarmType.DEVICE_RESTARTED || alarm.causedBy().isEmpty() || !alarm.settled()) {
            return false;
        }
        Restart restart = Restart.of(alarm, moment);
        return !restart.again() || explains(alarm.causedBy().getAsLong(), restart);
    }

    /** The last of several restarts: its own silence or that of what it hangs on, or another restart of that. */
    private boolean explains(long causeId, Restart restart) {
        // mostly the cause is active still: asked of the database for each alarm in each pass, a large outage would be
        // felt
        return silences.alarm(causeId)
                .or(() -> moment.tools().book().find(CustomerScope.everyone(), causeId))
                .filter(cause -> switch (cause.key().type()) {
                    case DEVICE_SILENT, UPLINK_LOST, VIEW_LOST ->
                        cause.clearedAt()
                                .map(end -> end.plus(EndedCause.STARTING))
                                .filter(end -> end.isBefore(restart.known()))
                                .isEmpty();
                    case DEVICE_RESTARTED -> together(cause.changed(), restart.known());
                    default -> false;
                })
                .isPresent();
    }

    private Optional<AlarmKey> restart(OpenAlarm alarm, Fleet.Device device, List<String> evidence) {
        Restart restart = Restart.of(alarm, moment);
        return ownSilence(restart, device, evidence)
                .or(() -> ended(device, evidence))
                .or(() -> overSilence(alarm, device, evidence))
                .or(() -> above(alarm, device, evidence))
                .or(() -> changed(restart, device, evidence));
    }

    /** It restarted within a silence that has an alarm: what explains that explains this. */
    private Optional<AlarmKey> ownSilence(Restart restart, Fleet.Device device, List<String> evidence) {
        // a silence that began after the restart is another matter
        Optional<AlarmKey> cause = moment.alarm(of(AlarmType.DEVICE_SILENT, device.id()))
                .filter(each -> !each.began().isAfter(restart.known()))
                .map(silences::root);
        cause.ifPresent(key -> evidence.add("It was silent until it restarted: see that alarm."));
        return cause;
    }

    /** Mostly that silence is over when the restart comes to light: the answer that tells of it ended it. */
    private Optional<AlarmKey> overSilence(OpenAlarm alarm, Fleet.Device device, List<String> evidence) {
        // once nothing was found in time, later passes do not ask again
        Optional<OpenAlarm> silence =
                alarm.settled() && !open(alarm) ? Optional.empty() : silences.around(alarm, device);
        silence.ifPresent(each -> evidence.add(
                each.key().resource().equals(Resource.device(device.id()))
                        ? "It was silent until it restarted: see that alarm."
                        : "It restarted while " + upper(each) + " was silent, or just after: see that alarm."));
        return silence.map(silences::root);
    }

    private static String upper(OpenAlarm silence) {
        return silence.key().type() == AlarmType.UPLINK_LOST
                ? "the whole site"
                : silence.resourceName() + ", below which it hangs,";
    }

    private Optional<AlarmKey> ended(Fleet.Device device, List<String> evidence) {
        Optional<EndedCause> ended = endings.recent(device.id(), moment.now());
        ended.ifPresent(
                cause -> evidence.add("It was lost with " + cause.name() + ", which is back since a moment ago."));
        return ended.map(EndedCause::key);
    }

    /** The highest one above it that has such an alarm, of about the same time. */
    private Optional<AlarmKey> above(OpenAlarm alarm, Fleet.Device device, List<String> evidence) {
        AlarmType type = alarm.key().type();
        if (device.kind() == DeviceKind.GATEWAY || noneOf(type, device)) {
            return Optional.empty();
        }
        List<TreeNode> path = wirings.apply(device.siteId()).tree().pathUp(device.id());
        for (int i = path.size() - 1; i > 0; i--) {
            AlarmKey key = of(type, path.get(i).deviceId());
            if (moment.alarm(key).filter(found -> near(found, alarm)).isPresent()) {
                evidence.add(
                        type == AlarmType.FLAPPING
                                ? path.get(i).name() + ", below which it hangs, comes and goes as well."
                                : path.get(i).name() + ", below which it hangs, restarted at about the same time.");
                return Optional.of(key);
            }
        }
        return Optional.empty();
    }

    private boolean noneOf(AlarmType type, Fleet.Device but) {
        return moment.active().values().stream()
                .noneMatch(alarm -> alarm.key().type() == type
                        && alarm.siteId().equals(OptionalLong.of(but.siteId()))
                        && alarm.key().resource().id() != but.id());
    }

    private boolean near(OpenAlarm above, OpenAlarm alarm) {
        return Restart.of(alarm, moment).again()
                ? together(above.changed(), alarm.changed())
                : together(above.began(), alarm.began());
    }

    /** An upgrade, or another configuration, restarts a device once. */
    private Optional<AlarmKey> changed(Restart restart, Fleet.Device device, List<String> evidence) {
        Optional<AlarmKey> cause = moment.alarm(of(AlarmType.CONFIGURATION_CHANGED, device.id()))
                .filter(change -> !restart.again() && together(change.began(), restart.began()))
                .map(OpenAlarm::key);
        cause.ifPresent(
                key -> evidence.add("Its firmware or configuration changed at about the same time: see that alarm."));
        return cause;
    }

    private static boolean together(Instant a, Instant b) {
        return Duration.between(a, b).abs().compareTo(TOGETHER) <= 0;
    }

    private static AlarmKey of(AlarmType type, long device) {
        return AlarmKey.of(type, Resource.device(device));
    }
}
