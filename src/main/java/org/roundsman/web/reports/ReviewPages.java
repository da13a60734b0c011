package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.MonthDesk;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportWords;
import org.roundsman.web.page.Faults;

/** Reading a report over, adding a remark, finding it good. Sending it is for those who look after customers. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ReviewPages {

    private final MonthDesk desk;
    private final ReportViews views;
    private final ReviewViews reviews;
    private final ReportWords words;

    ReviewPages(MonthDesk desk, ReportViews views, ReviewViews reviews, ReportWords words) {
        this.desk = desk;
        this.views = views;
        this.reviews = reviews;
        this.words = words;
    }

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance working(long id, StateWord state);
    }

    /** The part that refreshes itself while work goes on; when it has ended, the browser loads the whole page. */
    @GET
    @Path("reports/{id}/progress")
    public Response progress(@RestPath long id) {
        KeptReport report = views.find(id);
        Response.ResponseBuilder answer = Response.ok(Templates.working(id, StateWord.of(report.state())));
        return ReviewViews.busy(report)
                ? answer.build()
                : answer.header("HX-Refresh", "true").build();
    }

    @POST
    @Path("reports/{id}/remark")
    public Response remark(@RestPath long id, @BeanParam ReviewForm form) {
        views.find(id);
        return done(id, form, () -> keepRemark(id, form), "/reports/" + id);
    }

    /** Language, paper, and whether list prices are shown. */
    @POST
    @Path("reports/{id}/look")
    public Response look(@RestPath long id, @BeanParam ReviewForm form) {
        views.find(id);
        return done(id, form, () -> keepLook(id, form), "/reports/" + id);
    }

    /** Finds it good, with the remark as it stands in the form. */
    @POST
    @Path("reports/{id}/approve")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response approve(@RestPath long id, @BeanParam ReviewForm form) {
        KeptReport report = views.find(id);
        Runnable act = () -> {
            keepRemark(id, form);
            desk.approve(id);
        };
        return done(id, form, act, form.goesOn() ? next(report) : "/reports/" + id);
    }

    @POST
    @Path("reports/{id}/reopen")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response reopen(@RestPath long id, @BeanParam ReviewForm form) {
        views.find(id);
        return done(id, form, () -> desk.reopen(id), "/reports/" + id);
    }

    /** Builds it from the data of now: once more, or as a further revision where it was sent. */
    @POST
    @Path("reports/{id}/build-again")
    public Response buildAgain(@RestPath long id, @BeanParam ReviewForm form) {
        KeptReport report = views.find(id);
        try {
            long fresh = desk.build(report.customerId(), report.from(), report.to());
            return to("/reports/" + fresh);
        } catch (DeskRejected e) {
            return refused(id, form, Faults.of("", e.getMessage()));
        }
    }

    @POST
    @Path("reports/{id}/send")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response send(@RestPath long id, @BeanParam ReviewForm form) {
        views.find(id);
        return done(id, form, () -> desk.send(id), "/reports/" + id);
    }

    /** Sends the same document to these as well. */
    @POST
    @Path("reports/{id}/send-again")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response sendAgain(@RestPath long id, @BeanParam ReviewForm form) {
        views.find(id);
        return done(id, form, () -> desk.sendAgain(id, Asked.addresses(form.recipients())), "/reports/" + id);
    }

    private void keepRemark(long id, ReviewForm form) {
        form.changedRemark().ifPresent(text -> desk.remark(id, text));
    }

    private void keepLook(long id, ReviewForm form) {
        Optional<Locale> language = form.languageOf(words.languages());
        Optional<ReportLook.PaperSize> paper = form.paperSize();
        Map<String, String> faults = new LinkedHashMap<>();
        if (language.isEmpty()) {
            faults.put("language", "choose one of the list");
        }
        if (paper.isEmpty()) {
            faults.put("paper", "choose one of the list");
        }
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
        desk.look(id, language.get(), paper.get(), form.showsCosts());
    }

    /** The next report to review, or the desk of the month when there is none. */
    private String next(KeptReport report) {
        OptionalLong next = reviews.next(report);
        return next.isPresent()
                ? "/reports/" + next.getAsLong()
                : report.month()
                        .map(month -> DeskAsked.address("/reports", month, ""))
                        .orElse("/reports/" + report.id());
    }

    private Response done(long id, ReviewForm form, Runnable act, String then) {
        try {
            act.run();
            return to(then);
        } catch (DeskRejected e) {
            return refused(id, form, Faults.of("", e.getMessage()));
        } catch (InputRejected e) {
            return refused(id, form, new Faults(e.faults()));
        }
    }

    private Response refused(long id, ReviewForm form, Faults faults) {
        return Response.status(422)
                .entity(ReportPages.Templates.report(views.of(id, form, faults)))
                .build();
    }

    private static Response to(String address) {
        return Response.seeOther(URI.create(address)).build();
    }
}
