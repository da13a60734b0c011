package org.roundsman.web.notices;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.notices.EscalationChain;
import org.roundsman.notices.EscalationChains;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Words;

/** Who is told next while nobody acknowledges: for the owner. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Role.OWNER_ROLE)
class ChainPages {

    private final EscalationChains chains;
    private final Customers customers;

    ChainPages(EscalationChains chains, Customers customers) {
        this.chains = chains;
        this.customers = customers;
    }

    /** A chain as a row shows it. */
    record Line(long id, String customer, String when, List<String> steps) {}

    /** What the page offers besides the form. */
    record Offers(
            List<Line> lines,
            List<Customer> customers,
            List<Severity> severities,
            List<EscalationChains.Member> members,
            List<Integer> steps) {}

    @CheckedTemplate(basePath = "notices")
    static class Templates {
        private Templates() {}

        static native TemplateInstance escalation(Offers offers, ChainForm form, Faults faults);
    }

    @GET
    @Path("notices/escalation")
    public TemplateInstance escalation() {
        return page(ChainForm.blank(), Faults.NONE);
    }

    @POST
    @Path("notices/escalation")
    public Response put(@BeanParam ChainForm form) {
        try {
            chains.put(form.chain());
            return back();
        } catch (NoticeRejected e) {
            return Response.status(422)
                    .entity(page(form, new Faults(e.faults())))
                    .build();
        }
    }

    @POST
    @Path("notices/chains/{chain}/remove")
    public Response remove(@RestPath long chain) {
        if (!chains.remove(chain)) {
            throw new NotFoundException();
        }
        return back();
    }

    private static Response back() {
        return Response.seeOther(URI.create("/notices/escalation")).build();
    }

    private TemplateInstance page(ChainForm form, Faults faults) {
        List<Customer> all = customers.all(CustomerScope.everyone());
        Map<Long, String> names = all.stream().collect(Collectors.toMap(one -> one.id, one -> one.name));
        List<EscalationChains.Member> members = chains.members();
        Map<Long, EscalationChains.Member> byId =
                members.stream().collect(Collectors.toMap(EscalationChains.Member::accountId, one -> one));
        List<Line> lines =
                chains.all().stream().map(chain -> line(chain, names, byId)).toList();
        return Templates.escalation(
                new Offers(lines, all, List.of(Severity.values()), members, List.of(1, 2, 3, 4, 5)), form, faults);
    }

    private static Line line(
            EscalationChain chain, Map<Long, String> names, Map<Long, EscalationChains.Member> members) {
        String customer =
                chain.customerId().map(id -> names.getOrDefault(id, "")).orElse("all that have none of their own");
        String when = "from " + chain.severity().word() + ", every " + Words.many(chain.minutes(), "minute", "minutes")
                + (chain.serviceHours() ? ", in service hours only" : "");
        List<String> steps = chain.steps().stream()
                .map(step ->
                        step.stream().sorted().map(id -> name(members.get(id))).collect(Collectors.joining(" and ")))
                .toList();
        return new Line(chain.id(), customer, when, steps);
    }

    private static String name(EscalationChains.Member member) {
        if (member == null) {
            return "somebody who cannot sign in any more";
        }
        return member.reachable()
                ? member.name()
                : member.name() + " (not reached: no way open, or escalations not wanted)";
    }
}
