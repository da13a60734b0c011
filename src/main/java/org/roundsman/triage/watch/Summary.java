package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.readings.DeviceState;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/** Sums up an alarm as it clears: how long, which devices, how many people, and what its end tells about the cause. */
record Summary(Moment moment) {

    private static final int MINUTE = 60;
    private static final int HOUR = 60;
    private static final int DAY = 24;

    /**
     * Such as {@code Back after 42 min; 14 access points, about 40 people; switch sw-2 restarted meanwhile, so it had lost its
     * power or was started again.}
     *
     * @param back when it was heard again
     */
    String of(OpenAlarm alarm, Instant back) {
        List<String> parts = new ArrayList<>();
        parts.add("Back after " + words(Duration.between(alarm.began(), back)));
        whom(alarm, back).ifPresent(parts::add);
        restart(alarm, back).ifPresent(parts::add);
        return String.join("; ", parts) + ".";
    }

    private Optional<String> whom(OpenAlarm alarm, Instant back) {
        List<String> words = new ArrayList<>();
        int points = alarm.impact().devices();
        if (points > 0 && alarm.causedBy().isEmpty()) {
            words.add(points == 1 ? "one access point" : points + " access points");
        }
        OptionalInt people = alarm.impact().clients();
        if (people.isPresent()) {
            words.add(people(people.getAsInt()));
        }
        if (alarm.causedBy().isEmpty() && people.orElse(0) > 0) {
            minutes(alarm, back).ifPresent(lost -> words.add(lost));
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", words));
    }

    private static String people(int count) {
        if (count == 0) {
            return "nobody suffered";
        }
        return "about " + count + (count == 1 ? " person" : " people");
    }

    private Optional<String> minutes(OpenAlarm alarm, Instant back) {
        if (alarm.siteId().isEmpty()) {
            return Optional.empty();
        }
        Set<Long> devices = new HashSet<>();
        if (alarm.key().resource().kind() == Resource.Kind.DEVICE) {
            devices.add(alarm.key().resource().id());
        }
        moment.tools().book().episodes(CustomerScope.everyone(), alarm.id()).stream()
                .findFirst()
                .map(Episode::affected)
                .orElse(List.of())
                .forEach(each -> devices.add(each.deviceId()));
        OptionalDouble lost =
                moment.tools().impacts().personMinutes(alarm.siteId().getAsLong(), devices, alarm.began(), back);
        if (lost.isEmpty()) {
            return Optional.empty();
        }
        long minutes = Math.round(lost.getAsDouble());
        return Optional.of(
                minutes < 2 * HOUR
                        ? "about " + minutes + " person-minutes lost"
                        : "about " + Math.round(minutes / (double) HOUR) + " person-hours lost");
    }

    /** What uptimes tell: of the device itself, or of the gateway of a site that was lost. */
    private Optional<String> restart(OpenAlarm alarm, Instant back) {
        if (alarm.key().type() == AlarmType.UPLINK_LOST) {
            return moment.fleet().of(alarm.key().resource().id()).stream()
                    .filter(device -> device.kind() == DeviceKind.GATEWAY)
                    .flatMap(device -> gateway(alarm, device).stream())
                    .findFirst();
        }
        Fleet.Device device =
                moment.fleet().devices().get(alarm.key().resource().id());
        if (device == null || bootedIn(device, alarm).isEmpty()) {
            return Optional.empty();
        }
        if (device.kind() == DeviceKind.ACCESS_POINT) {
            ZoneId zone = alarm.zone();
            Instant up = bootedIn(device, alarm).get();
            return Optional.of("it restarted meanwhile, up since " + new Times(zone, back).second(up));
        }
        return Optional.of(device.kind().word() + " " + device.name()
                + " restarted meanwhile, so it had lost its power or was started again");
    }

    private Optional<String> gateway(OpenAlarm alarm, Fleet.Device gateway) {
        DeviceState state = moment.states().get(gateway.id());
        boolean heard = state != null
                && state.lastAnswered().filter(at -> at.isAfter(alarm.began())).isPresent();
        if (!heard || state.uptime().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                bootedIn(gateway, alarm).isPresent()
                        ? "gateway " + gateway.name() + " restarted meanwhile, so it was the power or the gateway"
                        : "gateway " + gateway.name() + " kept running, so it was the line");
    }

    /** When it started, if that was after its last answer before the alarm. */
    private Optional<Instant> bootedIn(Fleet.Device device, OpenAlarm alarm) {
        DeviceState state = moment.states().get(device.id());
        if (state == null || state.uptime().isEmpty() || state.lastAnswered().isEmpty()) {
            return Optional.empty();
        }
        Instant boot = state.lastAnswered().get().minusMillis((long)
                (1_000 * state.uptime().getAsDouble()));
        return Optional.of(boot).filter(at -> at.isAfter(alarm.began().minus(device.interval())));
    }

    /** {@code 40 s}, {@code 42 min}, {@code 3 h 5 min}, {@code 2 d 4 h}. */
    static String words(Duration time) {
        long seconds = Math.max(0, time.toSeconds());
        if (seconds < MINUTE) {
            return seconds + " s";
        }
        long minutes = Math.round(seconds / (double) MINUTE);
        if (minutes < HOUR) {
            return minutes + " min";
        }
        long hours = minutes / HOUR;
        return hours < DAY
                ? hours + " h" + (minutes % HOUR == 0 ? "" : " " + minutes % HOUR + " min")
                : hours / DAY + " d" + (hours % DAY == 0 ? "" : " " + hours % DAY + " h");
    }
}
