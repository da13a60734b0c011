package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.dispatch.MonthDesk;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.reports.ReportWords;

/** Building reports, reading them over and sending them. Not for tokens that are narrowed to one customer. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Reports")
class ReportActsApi {

    private final MonthDesk desk;
    private final ReportShelf shelf;
    private final ReportWords words;
    private final Customers customers;
    private final Caller caller;

    ReportActsApi(MonthDesk desk, ReportShelf shelf, ReportWords words, Customers customers, Caller caller) {
        this.desk = desk;
        this.shelf = shelf;
        this.words = words;
        this.customers = customers;
        this.caller = caller;
    }

    /** One that was not sent is built anew; of one that was sent a further revision is made where later data changed something. */
    @POST
    @Path("reports")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Has a report built; ask for it until its state is to-review")
    public RestResponse<KeptReportJson> addReport(ReportEntries.Build entry) {
        caller.requireEveryone();
        entry.require();
        customers.find(caller.scope(), entry.customerId()).orElseThrow(NotFoundException::new);
        long made = desk.build(entry.customerId(), entry.first(), entry.end());
        return RestResponse.ResponseBuilder.<KeptReportJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/reports/" + made))
                .entity(show(made))
                .build();
    }

    @POST
    @Path("reports/build-month")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Has the reports of a month built of all customers that have none")
    public ReportEntries.Queued buildReports(ReportEntries.Month month) {
        caller.requireEveryone();
        return new ReportEntries.Queued(desk.buildAll(ReportEntries.month("month", month.month())));
    }

    @POST
    @Path("reports/send-month")
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Operation(summary = "Sends the reports of a month that were reviewed and whose customers' plans name recipients")
    public ReportEntries.Queued sendReports(ReportEntries.Month month) {
        caller.requireEveryone();
        return new ReportEntries.Queued(desk.sendAll(ReportEntries.month("month", month.month())));
    }

    @POST
    @Path("reports/{report}/remark")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Replaces the remark of a report that was not reviewed yet")
    public KeptReportJson remarkReport(@RestPath long report, ReportEntries.Remark entry) {
        return done(report, () -> desk.remark(report, Given.text(entry.remark())));
    }

    @POST
    @Path("reports/{report}/look")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Says how a report that was not reviewed yet is to look")
    public KeptReportJson lookReport(@RestPath long report, ReportEntries.Look entry) {
        return done(
                report,
                () -> desk.look(
                        report,
                        entry.languageOf(words.languages()),
                        entry.paperSize(),
                        Given.or(entry.costs(), false)));
    }

    @POST
    @Path("reports/{report}/approve")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Operation(summary = "Finds a report good")
    public KeptReportJson approveReport(@RestPath long report) {
        return done(report, () -> desk.approve(report));
    }

    @POST
    @Path("reports/{report}/reopen")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Operation(summary = "Takes back that a report was found good")
    public KeptReportJson reopenReport(@RestPath long report) {
        return done(report, () -> desk.reopen(report));
    }

    @POST
    @Path("reports/{report}/send")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Operation(summary = "Sends a report to the recipients of its plan")
    public KeptReportJson sendReport(@RestPath long report) {
        return done(report, () -> desk.send(report));
    }

    @POST
    @Path("reports/{report}/send-again")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Sends a report that was sent to others, as it is")
    public KeptReportJson sendReportAgain(@RestPath long report, ReportEntries.Recipients to) {
        return done(report, () -> desk.sendAgain(report, Given.list(to.recipients())));
    }

    private KeptReportJson done(long report, Runnable act) {
        caller.requireEveryone();
        show(report);
        act.run();
        return show(report);
    }

    private KeptReportJson show(long report) {
        return shelf.find(caller.scope(), report).map(KeptReportJson::of).orElseThrow(NotFoundException::new);
    }
}
