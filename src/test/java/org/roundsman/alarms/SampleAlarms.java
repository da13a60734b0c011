package org.roundsman.alarms;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Invented alarms for tests of what is made of them. */
public final class SampleAlarms {

    public static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private SampleAlarms() {}

    /** What matters to its rank; everything else is the same. */
    public record Sample(
            long id, AlarmType type, Severity severity, OptionalInt people, int devices, boolean hours, Instant began) {

        public Sample of(AlarmType other) {
            return new Sample(id, other, severity, people, devices, hours, began);
        }

        public Sample with(Severity other) {
            return new Sample(id, type, other, people, devices, hours, began);
        }

        public Sample people(int count) {
            return new Sample(id, type, severity, OptionalInt.of(count), devices, hours, began);
        }

        public Sample unknown(int accessPoints) {
            return new Sample(id, type, severity, OptionalInt.empty(), accessPoints, hours, began);
        }

        public Sample outsideHours() {
            return new Sample(id, type, severity, people, devices, false, began);
        }

        public Sample began(Instant at) {
            return new Sample(id, type, severity, people, devices, hours, at);
        }

        public OpenAlarm alarm() {
            return alarm(new Impact(people, OptionalInt.empty(), OptionalInt.empty(), devices, hours));
        }

        public OpenAlarm alarm(Impact impact) {
            return alarm(impact, CauseKind.ITSELF, true);
        }

        public OpenAlarm alarm(Impact impact, CauseKind cause, boolean settled) {
            return new OpenAlarm(
                    id,
                    id,
                    AlarmKey.of(type, resource()),
                    OptionalLong.of(1),
                    "Pebblegate Dental",
                    type.resource() == Resource.Kind.SERVICE ? OptionalLong.empty() : OptionalLong.of(2),
                    "Mill Lane",
                    "Europe/Berlin",
                    "ap-1",
                    "ceiling",
                    severity,
                    began,
                    began,
                    began,
                    Optional.empty(),
                    "seen",
                    OperatorState.NONE,
                    "",
                    Optional.empty(),
                    "",
                    "",
                    cause,
                    OptionalLong.empty(),
                    List.of(),
                    impact,
                    0,
                    false,
                    settled);
        }

        private Resource resource() {
            return switch (type.resource()) {
                case SERVICE -> Resource.service();
                case SITE -> Resource.site(2);
                case DEVICE -> Resource.device(id);
            };
        }
    }

    /** The same when it has cleared. */
    public static OpenAlarm over(OpenAlarm alarm, Instant at) {
        return new OpenAlarm(
                alarm.id(),
                alarm.episodeId(),
                alarm.key(),
                alarm.customerId(),
                alarm.customer(),
                alarm.siteId(),
                alarm.site(),
                alarm.timeZone(),
                alarm.resourceName(),
                alarm.place(),
                alarm.severity(),
                alarm.began(),
                alarm.raised(),
                at,
                Optional.of(at),
                alarm.text(),
                alarm.operator(),
                alarm.operatorBy(),
                alarm.operatorUntil(),
                alarm.operatorReason(),
                alarm.takenBy(),
                alarm.cause(),
                alarm.causedBy(),
                alarm.evidence(),
                alarm.impact(),
                alarm.pointing(),
                alarm.planned(),
                alarm.settled());
    }

    /** A critical fault at noon, in service hours, that 20 people suffer from. */
    public static Sample sample(long id) {
        return new Sample(id, AlarmType.DEVICE_SILENT, Severity.CRITICAL, OptionalInt.of(20), 1, true, NOON);
    }
}
