package org.roundsman.web.planned;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.planned.Occurrence;
import org.roundsman.planned.PlannedBoard;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Planning;
import org.roundsman.planned.Timing;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Visitor;

/** Planned work of the whole fleet, of a site, and one window of it. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class PlannedPages {

    private static final int A_PAGE = 20;
    private static final int PREVIEW = 5;

    private final PlannedBoard board;
    private final Planning planning;
    private final Sites sites;
    private final Visitor visitor;
    private final Clock clock;

    PlannedPages(PlannedBoard board, Planning planning, Sites sites, Visitor visitor, Clock clock) {
        this.board = board;
        this.planning = planning;
        this.sites = sites;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the lists show.
     *
     * @param site null for the whole fleet
     * @param address of the page without its number
     */
    record Lists(
            Site site,
            String address,
            List<WorkLine> running,
            List<WorkLine> coming,
            List<WorkLine> repeating,
            Page<WorkLine> past) {

        public boolean nothing() {
            return running.isEmpty() && coming.isEmpty() && repeating.isEmpty() && past.total() == 0;
        }
    }

    /**
     * What the page of one window shows.
     *
     * @param open whether something of it is still to come
     * @param next times to come, with what the clock does to them
     * @param replaces id of the window whose place it took, or 0
     */
    record One(
            WorkLine line,
            String reason,
            String place,
            boolean open,
            List<ComingLine> next,
            List<String> ends,
            long replaces) {}

    @CheckedTemplate(basePath = "planned")
    static class Templates {
        private Templates() {}

        static native TemplateInstance lists(Lists lists);

        static native TemplateInstance one(One one);
    }

    @GET
    @Path("planned")
    public TemplateInstance all(@RestQuery @DefaultValue("1") int page) {
        return Templates.lists(lists(null, "/planned", page));
    }

    @GET
    @Path("sites/{id}/planned")
    public TemplateInstance ofSite(@RestPath long id, @RestQuery @DefaultValue("1") int page) {
        Site site = sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        return Templates.lists(lists(site, "/sites/" + id + "/planned", page));
    }

    private Lists lists(Site site, String address, int number) {
        Instant now = clock.instant();
        Long only = site == null ? null : site.id;
        PlannedBoard.Open open = board.open(visitor.scope(), only);
        Page<PlannedWindow> past = board.past(visitor.scope(), only, number, A_PAGE);
        return new Lists(
                site,
                address,
                lines(open.running(), now),
                lines(open.coming(), now),
                lines(open.repeating(), now),
                new Page<>(lines(past.items(), now), past.number(), past.size(), past.total()));
    }

    private static List<WorkLine> lines(List<PlannedWindow> windows, Instant now) {
        return windows.stream().map(one -> WorkLine.of(one, now)).toList();
    }

    @GET
    @Path("planned/{id}")
    public TemplateInstance one(@RestPath long id) {
        PlannedWindow window = planning.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        Instant now = clock.instant();
        PlannedWindow.State state = window.state(now);
        boolean open = state == PlannedWindow.State.RUNNING
                || state == PlannedWindow.State.COMING
                || state == PlannedWindow.State.REPEATING;
        var zone = window.target().zone();
        List<ComingLine> next = open && window.timing() instanceof Timing.Repeating
                ? ComingLine.of(Occurrence.next(window.timing(), now, zone, PREVIEW))
                : List.of();
        List<String> ends = window.course().ends().stream()
                .map(end -> org.roundsman.web.page.Words.moment(end.at(), zone) + " by " + end.by())
                .toList();
        return Templates.one(new One(
                WorkLine.of(window, now),
                window.reason(),
                window.target().siteId().isPresent()
                        ? "/sites/" + window.target().siteId().getAsLong()
                        : "",
                open,
                next,
                ends,
                window.course().replaces().orElse(0L)));
    }
}
