package org.roundsman.web.api;

import jakarta.ws.rs.QueryParam;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.alarms.AlarmSearch;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;

/** Which alarms to list. */
public class AlarmFilter {

    @QueryParam("search")
    @Parameter(description = "Words that all occur in text, names or type, each by its beginning")
    String search;

    @QueryParam("customer")
    @Parameter(description = "Whose alarms", schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String customer;

    @QueryParam("site")
    @Parameter(
            description = "Of that site and its devices",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String site;

    @QueryParam("device")
    @Parameter(
            description = "Of that device and its parts",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String device;

    @QueryParam("type")
    @Parameter(description = "Type of alarm, see /api/v1/alarm-types", example = "device-silent")
    String type;

    @QueryParam("severity")
    @Parameter(description = "Whose worst severity was at least this", example = "major")
    String severity;

    @QueryParam("state")
    @Parameter(
            description = "any, active, cleared, untouched (active, and nobody has done anything), acknowledged (and"
                    + " active), shelved, closed",
            example = "active")
    String state;

    @QueryParam("from")
    @Parameter(description = "Active at this moment or later (RFC 3339)", example = "2026-03-01T00:00:00Z")
    String from;

    @QueryParam("to")
    @Parameter(description = "Raised before this moment (RFC 3339)", example = "2026-04-01T00:00:00Z")
    String to;

    /**
     * The question.
     *
     * @throws ProblemException naming a filter that makes no sense
     */
    AlarmSearch search() {
        return new AlarmSearch(
                Given.text(search),
                number("customer", customer),
                number("site", site),
                number("device", device),
                type(),
                Choice.filter(Severity.class, "severity", severity),
                moment("from", from),
                moment("to", to),
                Choice.filter(AlarmSearch.State.class, "state", state).orElse(AlarmSearch.State.ANY),
                1,
                1);
    }

    private Optional<AlarmType> type() {
        String wanted = Given.text(type);
        Optional<AlarmType> found = AlarmType.byId(wanted);
        if (found.isEmpty() && !wanted.isEmpty()) {
            throw new ProblemException(Problem.refused(Map.of("type", "one of those at /api/v1/alarm-types")));
        }
        return found;
    }

    private static OptionalLong number(String field, String text) {
        Long number = Given.number(field, text);
        return number == null ? OptionalLong.empty() : OptionalLong.of(number);
    }

    private static Optional<Instant> moment(String field, String text) {
        try {
            return Given.text(text).isEmpty()
                    ? Optional.empty()
                    : Optional.of(OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeException e) {
            throw new ProblemException(
                    Problem.refused(Map.of(field, "a moment such as 2026-03-01T00:00:00Z (RFC 3339)")));
        }
    }
}
