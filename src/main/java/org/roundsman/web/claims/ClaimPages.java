package org.roundsman.web.claims;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.ClaimSearch;
import org.roundsman.claims.ClaimState;
import org.roundsman.claims.ClaimsCsv;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.claims.Entry.Choice;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** The claims: all of them, and as CSV. For the firm's own people. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ClaimPages {

    private static final int A_PAGE = 50;
    private static final String UNFINISHED = "unfinished";

    private final ClaimBook book;
    private final Customers customers;
    private final Visitor visitor;
    private final Clock clock;

    ClaimPages(ClaimBook book, Customers customers, Visitor visitor, Clock clock) {
        this.book = book;
        this.customers = customers;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the list shows.
     *
     * @param address of the page with its filter, without the number
     */
    record Shown(Page<ClaimWords.Line> page, List<Choice> states, List<Choice> customers, String address) {

        /** How many there are, in words. */
        public String count() {
            return Words.many(page.total(), "claim", "claims");
        }
    }

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance list(Shown shown);
    }

    /** With {@code state} unfinished, any, or one of the states. */
    @GET
    @Path("claims")
    public TemplateInstance list(
            @RestQuery @DefaultValue(UNFINISHED) String state,
            @RestQuery @DefaultValue("") String customer,
            @RestQuery @DefaultValue("1") int page) {
        OptionalLong of = number(customer);
        Page<Claim> found = book.search(
                visitor.scope(),
                new ClaimSearch(ClaimState.of(state), state.equals(UNFINISHED), of, Math.max(1, page), A_PAGE));
        Instant now = clock.instant();
        Page<ClaimWords.Line> lines = new Page<>(
                found.items().stream().map(claim -> ClaimWords.line(claim, now)).toList(),
                found.number(),
                found.size(),
                found.total());
        String word = ClaimState.of(state).map(ClaimState::word).orElse(state.equals(UNFINISHED) ? UNFINISHED : "any");
        String address = "/claims?state=" + word + (of.isPresent() ? "&customer=" + of.getAsLong() : "");
        return Templates.list(new Shown(lines, states(word), customers(of), address));
    }

    private static OptionalLong number(String text) {
        try {
            return text.isEmpty() ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(text));
        } catch (NumberFormatException e) {
            throw new NotFoundException(e);
        }
    }

    private static List<Choice> states(String chosen) {
        List<Choice> all = new ArrayList<>();
        all.add(new Choice(UNFINISHED, "not closed", chosen.equals(UNFINISHED)));
        all.add(new Choice("any", "any", chosen.equals("any")));
        Arrays.stream(ClaimState.values())
                .map(state -> new Choice(state.word(), state.word(), chosen.equals(state.word())))
                .forEach(all::add);
        return all;
    }

    private List<Choice> customers(OptionalLong chosen) {
        return customers.all(visitor.scope()).stream()
                .map(one -> new Choice(String.valueOf(one.id), one.name, one.id == chosen.orElse(0)))
                .toList();
    }

    /** Every claim. */
    @GET
    @Path("claims.csv")
    @Produces("text/csv")
    public Response download() {
        CustomerScope scope = visitor.scope();
        StreamingOutput rows =
                out -> ClaimsCsv.claims((id, most) -> book.after(scope, Optional.empty(), id, most), out);
        return Response.ok(rows)
                .type("text/csv; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"claims.csv\"")
                .build();
    }
}
