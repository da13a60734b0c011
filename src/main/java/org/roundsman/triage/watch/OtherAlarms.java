package org.roundsman.triage.watch;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.LongFunction;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Verdict;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.SiteWiring;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/**
 * Verdicts on alarms that rules raise. Mostly such an alarm says it all; a restart, or coming and going, may have its cause in
 * what the device hangs on. While a device is silent nothing new is known of its figures: its silence explains them.
 */
final class OtherAlarms {

    /** Nobody is without Wi-Fi because of these. */
    private static final Set<AlarmType> HARMLESS = Set.of(
            AlarmType.DEVICE_RESTARTED,
            AlarmType.CONFIGURATION_CHANGED,
            AlarmType.CLOCK_OFF,
            AlarmType.SETUP_NETWORK_OPEN);

    private static final String RADIO = "radio ";

    private final Moment moment;
    private final LongFunction<SiteWiring> wirings;
    private final Silences silences;
    private final Origins origins;

    OtherAlarms(Moment moment, Endings endings, LongFunction<SiteWiring> wirings) {
        this.moment = moment;
        this.wirings = wirings;
        this.silences = new Silences(moment, wirings);
        this.origins = new Origins(moment, endings, wirings, silences);
    }

    /** Whether rules raise it. */
    static boolean isOther(AlarmType type) {
        return switch (type) {
            case DEVICE_SILENT, UPLINK_LOST, VIEW_LOST, CREDENTIALS_REFUSED -> false;
            default -> true;
        };
    }

    /** What there is to say of it; empty where what was said stays so. */
    Optional<Verdict> news(OpenAlarm alarm) {
        return origins.stays(alarm) ? Optional.empty() : Optional.of(verdict(alarm));
    }

    private Verdict verdict(OpenAlarm alarm) {
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
            case DEVICE_RESTARTED -> explained(alarm, device, CauseKind.RESTARTED);
            case FLAPPING -> explained(alarm, device, CauseKind.FLAPPING);
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

    /** More may come to light of a restart, or of coming and going, in the next moments. */
    private Verdict explained(OpenAlarm alarm, Fleet.Device device, CauseKind kind) {
        Origins.Origin origin = origins.of(alarm, device);
        Set<Long> below = below(alarm, device);
        return new Verdict(
                alarm.key(),
                kind,
                origin.cause(),
                origin.evidence(),
                impact(alarm, device, below),
                below,
                origin.cause().isPresent() || !origins.open(alarm));
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
