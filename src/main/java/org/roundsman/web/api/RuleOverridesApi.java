package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.alarms.AlarmType;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;

/** Values that people set for everything, or for a model, customer, site or device. */
@Path("/api/v1/rules/{rule}/overrides")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Rules")
class RuleOverridesApi {

    private final RuleBook book;
    private final Caller caller;
    private final Tagged tagged;

    RuleOverridesApi(RuleBook book, Caller caller, Tagged tagged) {
        this.book = book;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists the values that were set of a rule, and for whom")
    public RestResponse<Listing<RuleJson.SetJson>> listRuleOverrides(
            UriInfo address, @BeanParam Paging paging, @RestPath String rule) {
        Stream<RuleJson.SetJson> all =
                book.overrides(caller.scope(), type(rule)).stream().map(RuleJson.SetJson::of);
        return Listing.of(address, paging, paging.cut(all, RuleJson.SetJson::id), one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{override}")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.READ)
    @Operation(summary = "Shows values that were set of a rule")
    public RestResponse<RuleJson.SetJson> showRuleOverride(@RestPath String rule, @RestPath long override) {
        RuleOverride found = find(rule, override);
        return tagged.ok(RuleJson.SetJson.of(found), RuleJson.Entry.of(found));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Sets values of a rule for everything or for one place, where none were set")
    public RestResponse<RuleJson.SetJson> addRuleOverride(@RestPath String rule, RuleJson.Entry entry) {
        RuleOverride made = book.save(caller.scope(), wish(type(rule), entry), 0);
        return tagged.created(
                "/api/v1/rules/" + rule + "/overrides/" + made.id(),
                RuleJson.SetJson.of(made),
                RuleJson.Entry.of(made));
    }

    @PATCH
    @Path("{override}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Operation(summary = "Changes values that were set of a rule")
    public RestResponse<RuleJson.SetJson> changeRuleOverride(
            @RestPath String rule,
            @RestPath long override,
            @RequestBody(content = @Content(schema = @Schema(implementation = RuleJson.Entry.class)))
                    MergePatch changes) {
        RuleOverride found = find(rule, override);
        RuleJson.Entry now = RuleJson.Entry.of(found);
        tagged.requireUnchanged(now);
        RuleJson.Entry wanted = changes.onto(now);
        RuleBook.Wish wish = wish(found.type(), wanted);
        if (wish.level() != found.level() || wish.targetId() != found.targetId()) {
            throw new ProblemException(
                    Problem.refused(Map.of("level", "for whom values are set stays as it was made")));
        }
        book.save(caller.scope(), wish, found.version());
        return showRuleOverride(rule, override);
    }

    @DELETE
    @Path("{override}")
    @Operation(summary = "Takes values of a rule back: what lies below holds again")
    public RestResponse<Void> removeRuleOverride(@RestPath String rule, @RestPath long override) {
        RuleOverride found = find(rule, override);
        tagged.requireUnchanged(RuleJson.Entry.of(found));
        book.remove(caller.scope(), override, found.version());
        return RestResponse.noContent();
    }

    private static RuleBook.Wish wish(AlarmType type, RuleJson.Entry entry) {
        RuleLevel level = RuleLevel.of(Given.text(entry.level()))
                .orElseThrow(() -> new ProblemException(
                        Problem.refused(Map.of("level", "one of: all, model, customer, site, device"))));
        Map<RuleField, String> fields =
                entry.values() == null ? Map.of() : entry.values().fields();
        return new RuleBook.Wish(type, level, Given.or(entry.targetId(), 0L), fields, Given.text(entry.reason()));
    }

    private RuleOverride find(String rule, long id) {
        return book.find(caller.scope(), id)
                .filter(one -> one.type() == type(rule))
                .orElseThrow(NotFoundException::new);
    }

    private static AlarmType type(String rule) {
        return AlarmType.byId(rule).orElseThrow(NotFoundException::new);
    }
}
