package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.alarms.AlarmType;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleTargets;
import org.roundsman.rules.ShippedRules;

/** The rules, and their values for a device. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Rules")
class RulesApi {

    private final RuleBook book;
    private final RuleTargets targets;
    private final Caller caller;

    RulesApi(RuleBook book, RuleTargets targets, Caller caller) {
        this.book = book;
        this.targets = targets;
        this.caller = caller;
    }

    @GET
    @Path("rules")
    @Operation(summary = "Lists the rules by which alarms are raised, by type")
    public RestResponse<Listing<RuleJson>> listRules(UriInfo address, @BeanParam Paging paging) {
        return listing(address, paging, rule -> RuleJson.of(rule, book.current()), RuleJson::type);
    }

    @GET
    @Path("rules/{rule}")
    @Operation(summary = "Shows a rule with its explanation and its values")
    public RuleJson showRule(@RestPath String rule) {
        return AlarmType.byId(rule)
                .map(type -> RuleJson.of(ShippedRules.of(type), book.current()))
                .orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("devices/{device}/rules")
    @Operation(summary = "Lists the values of the rules as they hold for a device, and where each comes from")
    public RestResponse<Listing<RuleJson.OfDevice>> listDeviceRules(
            UriInfo address, @BeanParam Paging paging, @RestPath long device) {
        RuleTarget target = targets.ofDevice(caller.scope(), device).orElseThrow(NotFoundException::new);
        return listing(
                address,
                paging,
                rule -> RuleJson.OfDevice.of(rule, book.current(), target),
                RuleJson.OfDevice::type);
    }

    private static <T> RestResponse<Listing<T>> listing(
            UriInfo address, Paging paging, Function<Rule, T> json, Function<T, String> key) {
        Stream<Rule> rules = ShippedRules.all().stream()
                .sorted(Comparator.comparing(rule -> rule.type().id()))
                .filter(rule -> rule.type().id().compareTo(paging.after) > 0);
        List<T> found = rules.limit(paging.size() + 1L).map(json).toList();
        return Listing.of(address, paging, found, key);
    }
}
