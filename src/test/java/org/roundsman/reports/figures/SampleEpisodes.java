package org.roundsman.reports.figures;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.alarms.Severity;

/** Invented alarms of an invented site. */
final class SampleEpisodes {

    private static final Instant NOON = Instant.parse("2026-06-10T12:00:00Z");

    private SampleEpisodes() {}

    /** What matters about one; everything else is the same. */
    record Sample(
            long id,
            AlarmType type,
            OptionalLong device,
            Instant began,
            Optional<Instant> cleared,
            CauseKind cause,
            OptionalLong explainedBy,
            Set<Long> affected,
            Optional<Instant> taken,
            boolean planned,
            Severity severity) {

        Sample lasts(Instant from, Instant to) {
            return new Sample(
                    id,
                    type,
                    device,
                    from,
                    Optional.ofNullable(to),
                    cause,
                    explainedBy,
                    affected,
                    taken,
                    planned,
                    severity);
        }

        Sample because(CauseKind other) {
            return new Sample(id, type, device, began, cleared, other, explainedBy, affected, taken, planned, severity);
        }

        Sample explainedBy(long other) {
            return new Sample(
                    id,
                    type,
                    device,
                    began,
                    cleared,
                    cause,
                    OptionalLong.of(other),
                    affected,
                    taken,
                    planned,
                    severity);
        }

        Sample with(Long... devices) {
            return new Sample(
                    id, type, device, began, cleared, cause, explainedBy, Set.of(devices), taken, planned, severity);
        }

        Sample taken(Instant at) {
            return new Sample(
                    id, type, device, began, cleared, cause, explainedBy, affected, Optional.of(at), planned, severity);
        }

        Sample inPlannedWork() {
            return new Sample(id, type, device, began, cleared, cause, explainedBy, affected, taken, true, severity);
        }

        Sample with(Severity other) {
            return new Sample(id, type, device, began, cleared, cause, explainedBy, affected, taken, planned, other);
        }

        PastEpisode episode() {
            return new PastEpisode(
                    id,
                    100 + id,
                    type,
                    device,
                    OptionalLong.of(SampleSite.SITE),
                    ZoneId.of("Europe/Berlin"),
                    device.isPresent() ? "device " + device.getAsLong() : "Mill Lane",
                    began,
                    began,
                    cleared,
                    severity,
                    cause,
                    explainedBy,
                    OptionalInt.empty(),
                    planned,
                    affected,
                    taken);
        }
    }

    static Sample of(long id, AlarmType type, OptionalLong device) {
        return new Sample(
                id,
                type,
                device,
                NOON,
                Optional.empty(),
                CauseKind.ITSELF,
                OptionalLong.empty(),
                Set.of(),
                Optional.empty(),
                false,
                Severity.MAJOR);
    }

    static PastEpisode silent(long id, long device) {
        return of(id, AlarmType.DEVICE_SILENT, OptionalLong.of(device)).episode();
    }
}
