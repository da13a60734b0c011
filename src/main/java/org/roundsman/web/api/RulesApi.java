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
import org.roundsman.rules.ShippedRules;

/** The rules. They are no single customer's. */
@Path("/api/v1/rules")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Rules")
class RulesApi {

    private final RuleBook book;

    RulesApi(RuleBook book) {
        this.book = book;
    }

    @GET
    @Operation(summary = "Lists the rules by which alarms are raised, by type")
    public RestResponse<Listing<RuleJson>> listRules(UriInfo address, @BeanParam Paging paging) {
        return listing(address, paging, rule -> RuleJson.of(rule, book.current()), RuleJson::type);
    }

    @GET
    @Path("{rule}")
    @Operation(summary = "Shows a rule with its explanation and its values")
    public RuleJson showRule(@RestPath String rule) {
        return AlarmType.byId(rule)
                .map(type -> RuleJson.of(ShippedRules.of(type), book.current()))
                .orElseThrow(NotFoundException::new);
    }

    /** A piece of the list of rules, in the form that is wanted. */
    static <T> RestResponse<Listing<T>> listing(
            UriInfo address, Paging paging, Function<Rule, T> json, Function<T, String> key) {
        Stream<Rule> rules = ShippedRules.all().stream()
                .sorted(Comparator.comparing(rule -> rule.type().id()))
                .filter(rule -> rule.type().id().compareTo(paging.after) > 0);
        List<T> found = rules.limit(paging.size() + 1L).map(json).toList();
        return Listing.of(address, paging, found, key);
    }
}
