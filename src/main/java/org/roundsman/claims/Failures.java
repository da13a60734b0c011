package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmSearch;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.shared.Page;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.EventSearch;
import org.roundsman.timeline.PastEvents;

/** Asks what a place read while a unit stood there. Callers check the customer scope of the device first. */
@ApplicationScoped
class Failures {

    private static final Duration LOOKED_AT = Duration.ofDays(30);

    private final DeviceHistory history;
    private final PastEvents events;
    private final AlarmBook alarms;

    @Inject
    Failures(DeviceHistory history, PastEvents events, AlarmBook alarms) {
        this.history = history;
        this.events = events;
        this.alarms = alarms;
    }

    /** The last 30 days until now, or until the unit left, or the shorter time since it came. */
    Failure lately(CustomerScope scope, long deviceId, Optional<Stay> stay, Instant now) {
        Optional<Instant> left = stay.flatMap(Stay::until);
        Instant to = left.orElse(now);
        Instant earliest = to.minus(LOOKED_AT);
        Instant from = stay.map(Stay::from).filter(at -> at.isAfter(earliest)).orElse(earliest);
        Page<OpenAlarm> found = alarms(scope, deviceId, from, to, Failure.MOST);
        return new Failure(
                from,
                to,
                left.isPresent(),
                history.availability(deviceId, from, to),
                history.spans(deviceId, from, to),
                restarts(deviceId, from, to),
                found.items(),
                found.total() - found.items().size());
    }

    /** What the place read in that time. */
    UnitPast.Read read(CustomerScope scope, long deviceId, Instant from, Instant to) {
        return new UnitPast.Read(
                history.availability(deviceId, from, to),
                restarts(deviceId, from, to).size(),
                alarms(scope, deviceId, from, to, 1).total());
    }

    private List<Instant> restarts(long deviceId, Instant from, Instant to) {
        return events.between(from, to, Set.of(EventKind.RESTARTED), List.of(deviceId)).stream()
                .map(EventSearch.Numbered::event)
                .map(DeviceEvent::at)
                .toList();
    }

    private Page<OpenAlarm> alarms(CustomerScope scope, long deviceId, Instant from, Instant to, int most) {
        return alarms.search(
                scope,
                new AlarmSearch(
                        "",
                        OptionalLong.empty(),
                        OptionalLong.empty(),
                        OptionalLong.of(deviceId),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(from),
                        Optional.of(to),
                        AlarmSearch.State.ANY,
                        1,
                        most));
    }

    /** The device that an alarm is about, and since when. */
    record Raised(long deviceId, Instant began) {}

    /** Empty when there is no such alarm in the scope, or it is about no device. */
    Optional<Raised> raised(CustomerScope scope, long alarmId) {
        return alarms.find(scope, alarmId)
                .filter(alarm -> alarm.key().resource().kind() == org.roundsman.alarms.Resource.Kind.DEVICE)
                .map(alarm -> new Raised(alarm.key().resource().id(), alarm.began()));
    }

    /** What an alarm says, as a beginning of what is wrong. */
    Optional<String> words(CustomerScope scope, long alarmId) {
        return alarms.find(scope, alarmId).map(alarm -> alarm.key().type().title() + ": " + alarm.text());
    }
}
