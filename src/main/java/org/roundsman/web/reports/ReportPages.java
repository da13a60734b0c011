package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Optional;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.ShelfSearch;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Where reports begin, for us and for customers' own people, and the page of each. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class ReportPages {

    private static final int A_PAGE = 25;

    private final ReportViews views;
    private final DeskViews desks;
    private final ShelfLines lines;
    private final ReportShelf shelf;
    private final Visitor visitor;

    ReportPages(ReportViews views, DeskViews desks, ShelfLines lines, ReportShelf shelf, Visitor visitor) {
        this.views = views;
        this.desks = desks;
        this.lines = lines;
        this.shelf = shelf;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance own(Page<ShelfLine> page);

        static native TemplateInstance report(ReportView view);
    }

    /** The month's desk; for a customer's own people the reports that they were sent. */
    @GET
    @Path("reports")
    public TemplateInstance begin(@BeanParam DeskAsked asked, @RestQuery String page) {
        return visitor.person().role() == Role.VIEWER
                ? Templates.own(own(Asked.page(page)))
                : DeskPages.Templates.desk(desks.whole(asked, DaysForm.EMPTY, Faults.NONE, ""));
    }

    private Page<ShelfLine> own(int page) {
        ShelfSearch sent = new ShelfSearch(OptionalLong.empty(), Optional.empty(), Optional.of(ReportState.SENT));
        return lines.of(shelf.search(visitor.scope(), sent, page, A_PAGE));
    }

    @GET
    @Path("reports/{id}")
    public TemplateInstance report(@RestPath long id) {
        return Templates.report(views.of(id, null, Faults.NONE));
    }
}
