package org.roundsman.web.token;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DefaultValue;
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
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.people.HeldToken;
import org.roundsman.people.PeopleException;
import org.roundsman.people.PersonalTokens;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** A person's tokens for programs; for the owner, everybody's. */
@Path("/tokens")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class TokenPages {

    private static final int OTHERS_A_PAGE = 25;

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
            Others others,
            List<TokenScope> scopes,
            List<Customer> customers,
            boolean narrows,
            int mostDays) {}

    /** One page of everybody else's; none of them for anybody but the owner. */
    record Others(List<TokenLine> lines, Page<HeldToken> page) {}

    @CheckedTemplate(basePath = "token")
    static class Templates {
        private Templates() {}

        static native TemplateInstance tokens(Lists lists, TokenForm form, Faults faults);

        static native TemplateInstance made(String name, String token);
    }

    /**
     * The page.
     *
     * @param others which page of everybody else's
     */
    @GET
    public TemplateInstance all(@RestQuery @DefaultValue("1") String others) {
        return page(TokenForm.blank(tokens.usualDays()), Faults.NONE, number(others));
    }

    private static int number(String page) {
        return page != null && page.matches("[1-9][0-9]{0,5}") ? Integer.parseInt(page) : 1;
    }

    /** Shows the new token once: it is in this answer and nowhere else. */
    @POST
    public Response add(@BeanParam TokenForm form) {
        try {
            String token = tokens.add(visitor.person(), form.token());
            return Response.ok(Templates.made(form.name().strip(), token)).build();
        } catch (PeopleException e) {
            return Response.status(422)
                    .entity(page(form, Faults.of(e.field(), e.getMessage()), 1))
                    .build();
        }
    }

    @POST
    @Path("{token}/revoke")
    public Response revoke(@RestPath long token, @RestForm String others) {
        if (!tokens.revoke(visitor.person(), token)) {
            throw new NotFoundException();
        }
        String back = others == null ? "" : "?others=" + number(others) + "#others";
        return Response.seeOther(URI.create("/tokens" + back)).build();
    }

    private TemplateInstance page(TokenForm form, Faults faults, int number) {
        SignedIn person = visitor.person();
        List<Customer> seen = customers.all(person.scope());
        Map<Long, String> names = seen.stream().collect(Collectors.toMap(c -> c.id, c -> c.name));
        List<HeldToken> own = tokens.of(person.accountId());
        Page<HeldToken> others = person.role() == Role.OWNER
                ? tokens.ofOthers(person.accountId(), number, OTHERS_A_PAGE)
                : new Page<>(List.of(), 1, OTHERS_A_PAGE, 0);
        Lists lists = new Lists(
                TokenLine.of(own, names, clock.instant()),
                new Others(TokenLine.of(others.items(), names, clock.instant()), others),
                TokenScope.usefulTo(person.role()),
                seen,
                person.customerId().isEmpty(),
                tokens.mostDays());
        return Templates.tokens(lists, form, faults);
    }
}
