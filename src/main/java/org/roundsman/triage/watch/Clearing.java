package org.roundsman.triage.watch;

import java.time.Instant;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Signal;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Standing;
import org.roundsman.triage.store.Fleet;

/**
 * Which alarms of silence and refusal are over: only when something was heard, or when nobody wants to hear. That rounds do
 * not come, since our own poller rests, ends nothing.
 */
final class Clearing {

    private final Moment moment;
    private final Endings endings;
    private final Summary summary;

    Clearing(Moment moment, Endings endings) {
        this.moment = moment;
        this.endings = endings;
        this.summary = new Summary(moment);
    }

    void work(Draft draft) {
        for (OpenAlarm alarm : moment.active().values()) {
            Optional<String> over =
                    switch (alarm.key().type()) {
                        case DEVICE_SILENT, CREDENTIALS_REFUSED -> ofDevice(alarm);
                        case UPLINK_LOST -> ofSite(alarm);
                        default -> Optional.empty();
                    };
            over.ifPresent(text -> {
                draft.signal(new Signal.Clear(alarm.key(), moment.now(), text));
                remember(alarm);
            });
        }
    }

    /** What it explained may still be starting, or was not asked again so far. */
    private void remember(OpenAlarm alarm) {
        Set<Long> affected = new HashSet<>();
        moment.active().values().stream()
                .filter(other ->
                        other.causedBy().isPresent() && other.causedBy().getAsLong() == alarm.id())
                .filter(other -> other.key().resource().kind() == Resource.Kind.DEVICE)
                .forEach(other -> affected.add(other.key().resource().id()));
        if (alarm.key().type() == AlarmType.UPLINK_LOST) {
            moment.fleet().of(alarm.key().resource().id()).stream()
                    .map(Fleet.Device::id)
                    .filter(id -> moment.look(id).filter(DeviceLook::lost).isPresent())
                    .filter(id -> !ownCause(id))
                    .forEach(affected::add);
        }
        if (!affected.isEmpty() && alarm.key().type() != AlarmType.CREDENTIALS_REFUSED) {
            endings.add(alarm, affected, moment.now());
        }
    }

    /** It was silent for another reason. */
    private boolean ownCause(long device) {
        return moment.alarm(AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device)))
                .filter(alarm -> alarm.causedBy().isEmpty())
                .isPresent();
    }

    private Optional<String> ofDevice(OpenAlarm alarm) {
        Fleet.Device device =
                moment.fleet().devices().get(alarm.key().resource().id());
        if (device == null) {
            return Optional.of("The device was removed from Roundsman.");
        }
        if (device.paused()) {
            return Optional.of("The device was paused: nobody asks it any more.");
        }
        Optional<DeviceLook> look = moment.look(device.id());
        return alarm.key().type() == AlarmType.DEVICE_SILENT
                ? look.flatMap(heard -> silenceOver(alarm, heard))
                : look.flatMap(heard -> refusalOver(alarm, heard));
    }

    private Optional<String> silenceOver(OpenAlarm alarm, DeviceLook look) {
        boolean heard = look.standing().heard() && look.heardAfter(alarm.began());
        if (!heard) {
            return Optional.empty();
        }
        Instant back = look.heard().orElseThrow();
        String text = summary.of(alarm, back);
        return Optional.of(look.standing() == Standing.REFUSES ? text + " It rejects our credentials now." : text);
    }

    private static Optional<String> refusalOver(OpenAlarm alarm, DeviceLook look) {
        return switch (look.standing()) {
            case ANSWERS ->
                look.heardAfter(alarm.began()) ? Optional.of("The credentials are accepted again.") : Optional.empty();
            case SILENT -> Optional.of("It does not refuse any more: it is silent now.");
            default -> Optional.empty();
        };
    }

    private Optional<String> ofSite(OpenAlarm alarm) {
        long siteId = alarm.key().resource().id();
        var devices = moment.fleet().of(siteId);
        if (!moment.fleet().sites().containsKey(siteId)) {
            return Optional.of("The site was removed from Roundsman.");
        }
        if (devices.stream().allMatch(Fleet.Device::paused)) {
            return Optional.of("All devices of the site were paused or removed: nobody asks them any more.");
        }
        return devices.stream()
                .flatMap(device -> moment.look(device.id()).stream())
                .filter(look -> look.standing().heard() && look.heardAfter(alarm.began()))
                .map(look -> look.heard().orElseThrow())
                .min(Instant::compareTo)
                .map(back -> summary.of(alarm, back));
    }
}
