package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.LongFunction;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Verdict;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/**
 * Verdicts on alarms that rules raise. Mostly such an alarm says it all; a restart, or coming and going, may have its cause in
 * what the device hangs on. While a device is silent nothing new is known of its figures: its silence explains them.
 */
final class OtherAlarms {

    /** Restarts of what hangs on one another that belong together: what starts last takes minutes (common practice). */
    private static final Duration TOGETHER = Duration.ofMinutes(10);

    /** So long the same may still come to light of what it hangs on. */
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    /** Nobody is without Wi-Fi because of these. */
    private static final Set<AlarmType> HARMLESS = Set.of(
            AlarmType.DEVICE_RESTARTED,
            AlarmType.CONFIGURATION_CHANGED,
            AlarmType.CLOCK_OFF,
            AlarmType.SETUP_NETWORK_OPEN);

    private static final String RADIO = "radio ";

    private final Moment moment;
    private final Endings endings;
    private final LongFunction<SiteWiring> wirings;
    private final Silences silences;

    OtherAlarms(Moment moment, Endings endings, LongFunction<SiteWiring> wirings) {
        this.moment = moment;
        this.endings = endings;
        this.wirings = wirings;
        this.silences = new Silences(moment, wirings);
    }

    /** Whether rules raise it. */
    static boolean isOther(AlarmType type) {
        return switch (type) {
            case DEVICE_SILENT, UPLINK_LOST, VIEW_LOST, CREDENTIALS_REFUSED -> false;
            default -> true;
        };
    }

    Verdict verdict(OpenAlarm alarm) {
        Fleet.Device device =
                moment.fleet().devices().get(alarm.key().resource().id());
        if (alarm.key().resource().kind() != Resource.Kind.DEVICE || device == null) {
            return new Verdict(
                    alarm.key(),
                    CauseKind.ITSELF,
                    Optional.empty(),
                    List.of(),
                    Impact.unknown(0, false),
                    Set.of(),
                    true);
        }
        return switch (alarm.key().type()) {
            case DEVICE_RESTARTED -> restarted(alarm, device);
            case FLAPPING -> flapping(alarm, device);
            case CONFIGURATION_CHANGED -> plain(alarm, device, CauseKind.ITSELF, Optional.empty());
            case RADIO_OFF -> plain(alarm, device, CauseKind.RADIO_OFF, silences.now(device));
            default -> plain(alarm, device, CauseKind.ITSELF, silences.now(device));
        };
    }

    /**
     * An alarm that says it all.
     *
     * @param silence of the device, for an alarm of a figure: what was read last is old by now
     */
    private Verdict plain(OpenAlarm alarm, Fleet.Device device, CauseKind cause, Optional<OpenAlarm> silence) {
        Set<Long> below = below(alarm, device);
        return new Verdict(
                alarm.key(),
                cause,
                silence.map(silences::root),
                silence.map(each -> List.of(lastSeen(each, device))).orElse(List.of()),
                impact(alarm, device, below),
                below,
                true);
    }

    private String lastSeen(OpenAlarm silence, Fleet.Device device) {
        Times times = new Times(silence.zone(), moment.now());
        return moment.look(device.id())
                .flatMap(DeviceLook::heard)
                .map(heard -> "Last seen at " + times.minute(heard) + "; silent since: nothing newer is known.")
                .orElse("Silent since " + times.minute(silence.began()) + ": nothing newer is known.");
    }

    private Verdict restarted(OpenAlarm alarm, Fleet.Device device) {
        List<String> evidence = new ArrayList<>();
        Optional<AlarmKey> cause = ownSilence(alarm, device, evidence)
                .or(() -> ended(device, evidence))
                .or(() -> overSilence(alarm, device, evidence))
                .or(() -> above(alarm, device, AlarmType.DEVICE_RESTARTED, evidence));
        return judged(alarm, device, CauseKind.RESTARTED, cause, evidence);
    }

    private Verdict flapping(OpenAlarm alarm, Fleet.Device device) {
        List<String> evidence = new ArrayList<>();
        Optional<AlarmKey> cause = above(alarm, device, AlarmType.FLAPPING, evidence);
        return judged(alarm, device, CauseKind.FLAPPING, cause, evidence);
    }

    private Verdict judged(
            OpenAlarm alarm, Fleet.Device device, CauseKind kind, Optional<AlarmKey> cause, List<String> evidence) {
        Instant bound = alarm.raised().plus(device.interval()).plus(PATIENCE);
        boolean settled = cause.isPresent() || !moment.now().isBefore(bound);
        Set<Long> below = below(alarm, device);
        return new Verdict(alarm.key(), kind, cause, evidence, impact(alarm, device, below), below, settled);
    }

    /** It restarted within a silence that has an alarm: what explains that explains this. */
    private Optional<AlarmKey> ownSilence(OpenAlarm alarm, Fleet.Device device, List<String> evidence) {
        AlarmKey silence = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device.id()));
        // a silence that began after the restart is another matter
        Optional<AlarmKey> cause = moment.alarm(silence)
                .filter(each -> !each.began().isAfter(alarm.raised()))
                .map(silences::root);
        cause.ifPresent(key -> evidence.add("It was silent until it restarted: see that alarm."));
        return cause;
    }

    /** Mostly that silence is over when the restart comes to light: the answer that tells of it ended it. */
    private Optional<AlarmKey> overSilence(OpenAlarm alarm, Fleet.Device device, List<String> evidence) {
        // once nothing was found in time, later passes do not ask again
        Optional<OpenAlarm> silence = alarm.settled() ? Optional.empty() : silences.around(alarm, device);
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
    private Optional<AlarmKey> above(OpenAlarm alarm, Fleet.Device device, AlarmType type, List<String> evidence) {
        if (device.kind() == DeviceKind.GATEWAY || noneOf(type, device)) {
            return Optional.empty();
        }
        List<TreeNode> path = wirings.apply(device.siteId()).tree().pathUp(device.id());
        for (int i = path.size() - 1; i > 0; i--) {
            AlarmKey key = AlarmKey.of(type, Resource.device(path.get(i).deviceId()));
            Optional<OpenAlarm> other = moment.alarm(key).filter(found -> near(found, alarm));
            if (other.isPresent()) {
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

    private static boolean near(OpenAlarm a, OpenAlarm b) {
        return Duration.between(a.began(), b.began()).abs().compareTo(TOGETHER) <= 0;
    }

    private Impact impact(OpenAlarm alarm, Fleet.Device device, Set<Long> below) {
        if (HARMLESS.contains(alarm.key().type())) {
            return Impact.unknown(0, false);
        }
        OptionalInt radio = radio(alarm.key().resource());
        if (radio.isPresent() && device.kind() == DeviceKind.ACCESS_POINT) {
            return moment.tools().impacts().ofRadio(device.siteId(), device.id(), radio.getAsInt(), moment.now());
        }
        Set<Long> suffer = new HashSet<>(below);
        suffer.add(device.id());
        return moment.tools().impacts().of(device.siteId(), suffer, moment.now());
    }

    /** The number of the radio that an alarm is about; empty for the whole device. */
    private static OptionalInt radio(Resource resource) {
        return resource.part().matches(RADIO + "\\d{1,5}")
                ? OptionalInt.of(Integer.parseInt(resource.part().substring(RADIO.length())))
                : OptionalInt.empty();
    }

    /** Of a switch or gateway, what hangs on it suffers too. */
    private Set<Long> below(OpenAlarm alarm, Fleet.Device device) {
        if (device.kind() == DeviceKind.ACCESS_POINT
                || HARMLESS.contains(alarm.key().type())) {
            return Set.of();
        }
        SiteTree tree = wirings.apply(device.siteId()).tree();
        Set<Long> below = new HashSet<>();
        tree.below(device.id()).forEach(node -> below.add(node.deviceId()));
        return below;
    }
}
