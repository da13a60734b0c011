package org.roundsman.web.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Who changed what, when and from where. */
@Path("/api/v1/changes")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.AUDIT)
@Tag(name = "Changes")
class AuditApi {

    private final AuditLog log;
    private final Caller caller;

    AuditApi(AuditLog log, Caller caller) {
        this.log = log;
        this.caller = caller;
    }

    /** One change, as it is kept. */
    @Schema(name = "Change")
    record ChangeJson(
            @Schema(examples = "5120") long id,
            @Schema(examples = "2026-03-04T09:31:07Z") Instant at,
            @Schema(examples = "wren") String person,

            @Schema(examples = "api", description = "page, api, command, or itself: the service by itself")
            String via,

            @Schema(description = "Name of the personal token, with api", examples = "stock list")
            String token,

            @Schema(examples = "192.0.2.17") String address,
            @Schema(examples = "changed") String action,
            @Schema(examples = "device") String kind,
            @Schema(nullable = true, examples = "417") Long subjectId,
            @Schema(examples = "Waiting room") String subject,
            @Schema(nullable = true, examples = "7") Long customerId,
            List<FieldJson> fields) {

        static ChangeJson of(AuditEntry entry) {
            return new ChangeJson(
                    entry.id(),
                    entry.at(),
                    entry.actor().name(),
                    Choice.word(entry.actor().via()),
                    entry.actor().token(),
                    entry.actor().address(),
                    entry.action(),
                    entry.subject().kind(),
                    entry.subject().id(),
                    entry.subject().name(),
                    entry.subject().customerId(),
                    entry.changes().stream()
                            .map(f -> new FieldJson(f.field(), f.old(), f.fresh()))
                            .toList());
        }
    }

    /** One field, before and after; never a secret. */
    @Schema(name = "ChangedField")
    record FieldJson(
            @Schema(examples = "name") String field,
            @Schema(examples = "AP 3") String old,

            @Schema(examples = "Waiting room") @JsonProperty("new")
            String fresh) {}

    /** A token that is narrowed to one customer sees that customer's changes only. */
    @GET
    @Operation(summary = "Lists who changed what, newest first")
    public RestResponse<Listing<ChangeJson>> listChanges(
            UriInfo address, @BeanParam Paging paging, @BeanParam ChangeFilter filter) {
        Optional<AuditLog.Place> before = paging.place();
        List<AuditEntry> found = filter.query(caller.scope())
                .map(query -> log.find(query, before, paging.size() + 1))
                .orElse(List.of());
        return Listing.of(address, paging, found.stream().map(ChangeJson::of).toList(), Paging::place);
    }
}
