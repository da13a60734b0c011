package org.roundsman.web.device;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.people.Role;
import org.roundsman.polling.PollNow;
import org.roundsman.system.SealException;
import org.roundsman.web.chart.Range;
import org.roundsman.web.page.Visitor;

/** One device: access point, switch or gateway. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class DevicePages {

    private final DeviceViews views;
    private final HappenedViews happened;
    private final Charts charts;
    private final PollNow pollNow;
    private final Visitor visitor;

    DevicePages(DeviceViews views, HappenedViews happened, Charts charts, PollNow pollNow, Visitor visitor) {
        this.views = views;
        this.happened = happened;
        this.charts = charts;
        this.pollNow = pollNow;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "device")
    static class Templates {
        private Templates() {}

        static native TemplateInstance device(DeviceView view, Happened happened, ChartSet charts);

        static native TemplateInstance live(DeviceView view);

        static native TemplateInstance poll(VisitView visit);

        static native TemplateInstance polled(DeviceView view, VisitView visit);
    }

    @GET
    @Path("devices/{id}")
    public TemplateInstance device(@RestPath long id, @RestQuery @DefaultValue("day") String range) {
        DeviceView view = view(id);
        Happened what =
                happened.view(visitor.scope(), id, HappenedViews.Wish.FIRST).orElseThrow(NotFoundException::new);
        return Templates.device(view, what, charts.of(view, Range.of(range)));
    }

    /** The part that refreshes itself. */
    @GET
    @Path("devices/{id}/live")
    public TemplateInstance live(@RestPath long id) {
        return Templates.live(view(id));
    }

    /** Visits the device and shows what it answered: a part of the page, or without scripts a page of its own. */
    @POST
    @Path("devices/{id}/poll")
    @Blocking
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Uni<TemplateInstance> poll(@RestPath long id, @HeaderParam("HX-Request") String part) {
        DeviceView view = view(id);
        return Uni.createFrom()
                .completionStage(pollNow.poll(id))
                .map(visit -> VisitView.of(visit, view.zone()))
                .onFailure(SealException.class)
                .recoverWithItem(VisitView::unopened)
                .map(visit -> part == null ? Templates.polled(view, visit) : Templates.poll(visit));
    }

    private DeviceView view(long id) {
        return views.view(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
