package org.roundsman.web.api;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.firmware.ExceptionDraft;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.MinimumDraft;
import org.roundsman.firmware.PolicyException;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.ReleaseDraft;
import org.roundsman.firmware.SecurityMinimum;
import org.roundsman.fleet.CustomerScope;

/** What is told and taken about firmware. */
final class FirmwareJson {

    private FirmwareJson() {}

    private static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }

    /** How the firmware of one device stands. */
    @Schema(name = "DeviceFirmware")
    record OfDevice(
            @Schema(examples = "417") long deviceId,
            @Schema(examples = "house-ap-10") String device,
            @Schema(examples = "21") long siteId,
            @Schema(examples = "7") long customerId,

            @Schema(nullable = true, description = "Null where its model is not known", examples = "3")
            Long modelId,

            @Schema(nullable = true, description = "Null where its model has no line of firmware", examples = "2")
            Long lineId,

            @Schema(description = "As the device tells it; empty where none was read", examples = "6.4.2")
            String version,

            @Schema(
                    nullable = true,
                    description = "When that version was first read",
                    examples = "2026-03-04T12:00:00Z")
            Instant since,

            @Schema(
                    description = "current, behind, withdrawn, ahead-of-policy, excepted or not-known",
                    examples = "current")
            String status,

            @Schema(examples = "the recommended release") String reason,

            @Schema(description = "Whether it lacks a security fix")
            boolean securityFixMissing,

            @Schema(description = "Whether others of the same line at the site run another release")
            boolean mixedSite,

            @Schema(
                    description = "What is to run; empty where no release that may run is recommended",
                    examples = "6.4.2")
            String recommended,

            @Schema(
                    nullable = true,
                    description = "Days since the recommended release came out, when an older one runs",
                    examples = "40")
            Long daysBehind) {

        static OfDevice of(FirmwareState state) {
            return new OfDevice(
                    state.deviceId(),
                    state.device(),
                    state.place().siteId(),
                    state.place().customerId(),
                    orNull(state.place().modelId()),
                    orNull(state.place().lineId()),
                    state.version(),
                    state.since().orElse(null),
                    Choice.word(state.status()),
                    state.reason(),
                    state.security(),
                    state.mixed(),
                    state.target(),
                    orNull(state.daysBehind()));
        }
    }

    /** What is decided about a line of firmware. */
    @Schema(name = "FirmwarePolicy")
    record Policy(
            @Schema(examples = "2") long lineId,
            @Schema(examples = "Tamarack access points") String line,

            @Schema(description = "dotted, semantic or pattern", examples = "dotted")
            String scheme,

            @Schema(description = "How versions are compared, in words")
            String rule,

            List<ReleaseJson> releases,
            List<MinimumJson> minimums,

            @Schema(description = "Ids of the sites that run the pilot release first", examples = "[21]")
            List<Long> pilotSites,

            List<ExceptionJson> exceptions) {

        /** Without what is of customers outside the scope. */
        static Policy of(LinePolicy line, CustomerScope scope) {
            return new Policy(
                    line.lineId(),
                    line.line(),
                    Choice.word(line.scheme()),
                    line.versions().words(),
                    line.releases().stream().map(ReleaseJson::of).toList(),
                    line.minimums().stream().map(MinimumJson::of).toList(),
                    line.pilots().stream()
                            .filter(site -> scope.includes(site.customerId()))
                            .map(LinePolicy.PilotSite::siteId)
                            .toList(),
                    line.exceptions().stream()
                            .filter(one -> scope.includes(one.customerId()))
                            .map(ExceptionJson::of)
                            .toList());
        }
    }

    /** What is decided about a release. */
    @Schema(name = "FirmwareRelease")
    record ReleaseJson(
            @Schema(examples = "11") long id,

            @Schema(nullable = true, description = "Null for all models of the line", examples = "3")
            Long modelId,

            @Schema(examples = "6.4.2") String version,

            @Schema(description = "recommended, accepted, pilot or withdrawn", examples = "recommended")
            String decision,

            @Schema(examples = "restarts under load") String reason,

            @Schema(nullable = true, description = "Null unless withdrawn", examples = "2026-03-04")
            LocalDate withdrawnOn,

            @Schema(nullable = true, description = "By the maker, where known", examples = "2026-02-01")
            LocalDate releasedOn) {

        static ReleaseJson of(Release one) {
            return new ReleaseJson(
                    one.id(),
                    orNull(one.modelId()),
                    one.version(),
                    Choice.word(one.stand()),
                    one.reason(),
                    one.withdrawnOn().orElse(null),
                    one.releasedOn().orElse(null));
        }
    }

    /** The same as it is entered. */
    @Schema(name = "FirmwareReleaseEntry")
    record ReleaseEntry(
            @Schema(nullable = true, description = "Null for all models of the line", examples = "3")
            Long modelId,

            @Schema(examples = "6.4.2") String version,

            @Schema(description = "recommended, accepted, pilot or withdrawn", examples = "recommended")
            String decision,

            @Schema(
                    nullable = true,
                    description = "Needed for a withdrawal; else a note",
                    examples = "restarts under load")
            String reason,

            @Schema(nullable = true, description = "Left out for today", examples = "2026-03-04")
            LocalDate withdrawnOn,

            @Schema(nullable = true, description = "By the maker, where known", examples = "2026-02-01")
            LocalDate releasedOn)
            implements ApiBody {

        static ReleaseEntry of(Release one) {
            return new ReleaseEntry(
                    orNull(one.modelId()),
                    one.version(),
                    Choice.word(one.stand()),
                    one.reason(),
                    one.withdrawnOn().orElse(null),
                    one.releasedOn().orElse(null));
        }

        ReleaseDraft draft() {
            return new ReleaseDraft(
                    modelId,
                    version,
                    Choice.of(Release.Stand.class, Given.text(decision)),
                    reason,
                    withdrawnOn,
                    releasedOn);
        }
    }

    /** The oldest version with a security fix. */
    @Schema(name = "FirmwareMinimum")
    record MinimumJson(
            @Schema(examples = "4") long id,

            @Schema(nullable = true, description = "Null for all models of the line", examples = "3")
            Long modelId,

            @Schema(examples = "6.1.0") String version,
            @Schema(examples = "TR-ADV-2026-003") String identifier,

            @Schema(examples = "Management page without a password")
            String note) {

        static MinimumJson of(SecurityMinimum one) {
            return new MinimumJson(one.id(), orNull(one.modelId()), one.version(), one.identifier(), one.note());
        }
    }

    /** The same as it is entered. */
    @Schema(name = "FirmwareMinimumEntry")
    record MinimumEntry(
            @Schema(nullable = true, description = "Null for all models of the line", examples = "3")
            Long modelId,

            @Schema(examples = "6.1.0") String version,
            @Schema(examples = "TR-ADV-2026-003") String identifier,

            @Schema(nullable = true, examples = "Management page without a password")
            String note)
            implements ApiBody {

        static MinimumEntry of(SecurityMinimum one) {
            return new MinimumEntry(orNull(one.modelId()), one.version(), one.identifier(), one.note());
        }

        MinimumDraft draft() {
            return new MinimumDraft(modelId, version, identifier, note);
        }
    }

    /** A site that runs the pilot release first. */
    @Schema(name = "FirmwarePilotEntry")
    record PilotEntry(@Schema(examples = "21") Long siteId) implements ApiBody {}

    /** A customer whose devices may run something else. */
    @Schema(name = "FirmwareException")
    record ExceptionJson(
            @Schema(examples = "5") long id,
            @Schema(examples = "7") long customerId,

            @Schema(description = "Empty for whatever runs there", examples = "5.9.13")
            String version,

            @Schema(examples = "The till is certified with it.")
            String reason,

            @Schema(description = "The last day on which it holds, by the clock of each site", examples = "2026-12-31")
            LocalDate lastDay,

            @Schema(examples = "wren") String madeBy,
            @Schema(examples = "2026-03-04T12:00:00Z") Instant madeAt) {

        static ExceptionJson of(PolicyException one) {
            return new ExceptionJson(
                    one.id(), one.customerId(), one.version(), one.reason(), one.lastDay(), one.madeBy(), one.madeAt());
        }
    }

    /** The same as it is entered. */
    @Schema(name = "FirmwareExceptionEntry")
    record ExceptionEntry(
            @Schema(examples = "7") Long customerId,

            @Schema(nullable = true, description = "Left out for whatever runs there", examples = "5.9.13")
            String version,

            @Schema(examples = "The till is certified with it.")
            String reason,

            @Schema(
                    type = SchemaType.STRING,
                    format = "date",
                    description = "The last day on which it holds, by the clock of each site",
                    examples = "2026-12-31")
            LocalDate lastDay)
            implements ApiBody {

        static ExceptionEntry of(PolicyException one) {
            return new ExceptionEntry(one.customerId(), one.version(), one.reason(), one.lastDay());
        }

        ExceptionDraft draft() {
            return new ExceptionDraft(customerId, version, reason, lastDay);
        }
    }
}
