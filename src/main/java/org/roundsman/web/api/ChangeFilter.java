package org.roundsman.web.api;

import jakarta.ws.rs.QueryParam;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.audit.AuditQuery;
import org.roundsman.fleet.CustomerScope;

/** Which changes to list. */
public class ChangeFilter {

    @QueryParam("search")
    @Parameter(description = "Words that all occur in the entry, each by its beginning")
    String search;

    @QueryParam("person")
    @Parameter(description = "Sign-in name of who made the change")
    String person;

    @QueryParam("kind")
    @Parameter(description = "What was changed, such as device")
    String kind;

    @QueryParam("subject")
    @Parameter(
            description = "Id of what was changed, with kind",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String subject;

    @QueryParam("customer")
    @Parameter(description = "Whose data was changed", schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String customer;

    @QueryParam("action")
    @Parameter(description = "How, such as removed")
    String action;

    @QueryParam("from")
    @Parameter(description = "At this moment or later (RFC 3339)", example = "2026-03-01T00:00:00Z")
    String from;

    @QueryParam("to")
    @Parameter(description = "Before this moment (RFC 3339)", example = "2026-04-01T00:00:00Z")
    String to;

    /**
     * The question; empty when it is about a customer out of scope.
     *
     * @throws ProblemException naming a moment that is none
     */
    Optional<AuditQuery> query(CustomerScope scope) {
        Long wanted = Given.number("customer", customer);
        if (wanted != null && !scope.includes(wanted)) {
            return Optional.empty();
        }
        Long of = wanted == null ? scope.onlyCustomer() : wanted;
        return Optional.of(new AuditQuery(
                Given.text(search),
                Given.text(person),
                Given.text(kind),
                Given.number("subject", subject),
                of,
                Given.text(action),
                moment("from", from),
                moment("to", to)));
    }

    private static Instant moment(String field, String text) {
        try {
            return text == null || text.isEmpty()
                    ? null
                    : OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException e) {
            throw new ProblemException(
                    Problem.refused(Map.of(field, "a moment such as 2026-03-01T00:00:00Z (RFC 3339)")));
        }
    }
}
