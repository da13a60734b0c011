package org.roundsman.web.token;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.people.HeldToken;
import org.roundsman.people.PeopleException;
import org.roundsman.people.PersonalTokens;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** A person's tokens for programs; for the owner, everybody's. */
@Path("/tokens")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class TokenPages {

    private final PersonalTokens tokens;
    private final Customers customers;
    private final Visitor visitor;
    private final Clock clock;

    TokenPages(PersonalTokens tokens, Customers customers, Visitor visitor, Clock clock) {
        this.tokens = tokens;
        this.customers = customers;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** What the page shows besides the form. */
    record Lists(
            List<TokenLine> own,
            List<TokenLine> others,
            List<TokenScope> scopes,
            List<Customer> customers,
            boolean narrows,
            int mostDays) {}

    @CheckedTemplate(basePath = "token")
    static class Templates {
        private Templates() {}

        static native TemplateInstance tokens(Lists lists, TokenForm form, Faults faults);

        static native TemplateInstance made(String name, String token);
    }

    @GET
    public TemplateInstance all() {
        return page(TokenForm.blank(tokens.usualDays()), Faults.NONE);
    }

    /** Shows the new token once: it is in this answer and nowhere else. */
    @POST
    public Response add(@BeanParam TokenForm form) {
        try {
            String token = tokens.add(visitor.person(), form.token());
            return Response.ok(Templates.made(form.name().strip(), token)).build();
        } catch (PeopleException e) {
            return Response.status(422)
                    .entity(page(form, Faults.of(e.field(), e.getMessage())))
                    .build();
        }
    }

    @POST
    @Path("{token}/revoke")
    public Response revoke(@RestPath long token) {
        if (!tokens.revoke(visitor.person(), token)) {
            throw new NotFoundException();
        }
        return Response.seeOther(URI.create("/tokens")).build();
    }

    private TemplateInstance page(TokenForm form, Faults faults) {
        SignedIn person = visitor.person();
        List<Customer> seen = customers.all(person.scope());
        Map<Long, String> names = seen.stream().collect(Collectors.toMap(c -> c.id, c -> c.name));
        List<HeldToken> own = tokens.of(person.accountId());
        List<HeldToken> others = person.role() == Role.OWNER
                ? tokens.all().stream()
                        .filter(token -> token.accountId() != person.accountId())
                        .toList()
                : List.of();
        Lists lists = new Lists(
                TokenLine.of(own, names, clock.instant()),
                TokenLine.of(others, names, clock.instant()),
                TokenScope.usefulTo(person.role()),
                seen,
                person.customerId().isEmpty(),
                tokens.mostDays());
        return Templates.tokens(lists, form, faults);
    }
}
