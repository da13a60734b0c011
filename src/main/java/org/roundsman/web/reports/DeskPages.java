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
import java.time.YearMonth;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.dispatch.MonthDesk;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The month's desk: every customer's report of a month, and building them. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class DeskPages {

    private final DeskViews views;
    private final MonthDesk desk;
    private final Customers customers;
    private final Visitor visitor;

    DeskPages(DeskViews views, MonthDesk desk, Customers customers, Visitor visitor) {
        this.views = views;
        this.desk = desk;
        this.customers = customers;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance desk(DeskView.Whole whole);

        static native TemplateInstance live(DeskView view);
    }

    /** The part that refreshes itself while reports are built or sent. */
    @GET
    @Path("reports/progress")
    public TemplateInstance progress(@BeanParam DeskAsked asked) {
        return Templates.live(views.of(asked));
    }

    /** Builds the report of every customer that has none of the month. */
    @POST
    @Path("reports/build-all")
    public Response buildAll(@RestForm String month) {
        return inMonth(month, wanted -> {
            desk.buildAll(wanted);
            return at(wanted);
        });
    }

    /** Sends every report of the month that was found good. */
    @POST
    @Path("reports/send-all")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response sendAll(@RestForm String month) {
        return inMonth(month, wanted -> {
            desk.sendAll(wanted);
            return at(wanted);
        });
    }

    /** Builds a customer's report of the month. */
    @POST
    @Path("reports/build")
    public Response build(@RestForm String customer, @RestForm String month) {
        return inMonth(month, wanted -> {
            desk.build(
                    require(Asked.number(customer).orElse(0)),
                    wanted.atDay(1),
                    wanted.plusMonths(1).atDay(1));
            return at(wanted);
        });
    }

    /** Builds a customer's report of any days. */
    @POST
    @Path("reports/build-days")
    public Response buildDays(@BeanParam DaysForm form) {
        try {
            DaysForm.Days days = form.days();
            long report = desk.build(require(days.customerId()), days.from(), days.to());
            return Response.seeOther(URI.create("/reports/" + report)).build();
        } catch (InputRejected e) {
            return refused(new DeskAsked("", ""), form, new Faults(e.faults()), "");
        } catch (DeskRejected e) {
            return refused(new DeskAsked("", ""), form, Faults.of("last", e.getMessage()), "");
        }
    }

    private Response inMonth(String month, Function<YearMonth, Response> work) {
        DeskAsked asked = new DeskAsked(month, "");
        try {
            return Asked.month(month)
                    .map(work)
                    .orElseGet(() -> refused(asked, DaysForm.EMPTY, Faults.NONE, "Nothing was done: choose a month."));
        } catch (DeskRejected e) {
            return refused(asked, DaysForm.EMPTY, Faults.NONE, e.getMessage());
        }
    }

    private long require(long customer) {
        return customers.find(visitor.scope(), customer).orElseThrow(NotFoundException::new).id;
    }

    private Response refused(DeskAsked asked, DaysForm days, Faults faults, String said) {
        return Response.status(422)
                .entity(Templates.desk(views.whole(asked, days, faults, said)))
                .build();
    }

    private static Response at(YearMonth month) {
        return Response.seeOther(URI.create(DeskAsked.address("/reports", month, "")))
                .build();
    }
}
