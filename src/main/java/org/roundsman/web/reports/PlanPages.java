package org.roundsman.web.reports;

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
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.reports.ReportWords;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** When each customer's reports are built, how they look, and who gets them. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class PlanPages {

    private static final List<String> ZONES = ZoneId.getAvailableZoneIds().stream()
            .filter(zone -> zone.contains("/") && !zone.startsWith("Etc/") && !zone.startsWith("SystemV/"))
            .sorted()
            .toList();

    private final ReportPlans plans;
    private final ReportWords words;
    private final Customers customers;
    private final Visitor visitor;

    PlanPages(ReportPlans plans, ReportWords words, Customers customers, Visitor visitor) {
        this.plans = plans;
        this.words = words;
        this.customers = customers;
        this.visitor = visitor;
    }

    /**
     * A customer in the list.
     *
     * @param when it is built by itself, or empty
     * @param recipients or empty for none
     */
    record Line(long customerId, String customer, String when, String language, String recipients, String approval) {

        static Line of(Customer customer, ReportPlan plan) {
            return new Line(
                    customer.id,
                    customer.name,
                    plan.active()
                            ? "day " + plan.day() + ", " + String.format(Locale.ENGLISH, "%02d:00", plan.hour()) + " "
                                    + plan.zone().getId()
                            : "",
                    Choice.languageName(plan.language()) + ", " + Choice.paperName(plan.paper()),
                    String.join(", ", plan.recipients()),
                    plan.approval() ? "after review" : "at once");
        }
    }

    /** One plan with what there is to choose. */
    record Shown(
            long customerId,
            String customer,
            PlanForm form,
            Faults faults,
            List<Choice> languages,
            List<Choice> papers,
            List<String> zones) {}

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance plans(List<Line> lines);

        static native TemplateInstance plan(Shown shown);
    }

    @GET
    @Path("reports/plans")
    public TemplateInstance all() {
        Map<Long, ReportPlan> kept =
                plans.all().stream().collect(Collectors.toMap(ReportPlan::customerId, Function.identity()));
        List<Line> lines = customers.all(visitor.scope()).stream()
                .map(one -> Line.of(one, kept.containsKey(one.id) ? kept.get(one.id) : plans.of(one.id)))
                .toList();
        return Templates.plans(lines);
    }

    @GET
    @Path("reports/plans/{customer}")
    public TemplateInstance one(@RestPath long customer) {
        return Templates.plan(shown(find(customer), PlanForm.of(plans.of(customer)), Faults.NONE));
    }

    @POST
    @Path("reports/plans/{customer}")
    public Response save(@RestPath long customer, @BeanParam PlanForm form) {
        Customer of = find(customer);
        try {
            plans.save(customer, form.draft());
            return Response.seeOther(URI.create("/reports/plans")).build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.plan(shown(of, form, new Faults(e.faults()))))
                    .build();
        }
    }

    private Shown shown(Customer customer, PlanForm form, Faults faults) {
        return new Shown(
                customer.id,
                customer.name,
                form,
                faults,
                Choice.languages(words.languages(), form.language()),
                Choice.papers(form.paper()),
                ZONES);
    }

    private Customer find(long customer) {
        return customers.find(visitor.scope(), customer).orElseThrow(NotFoundException::new);
    }
}
