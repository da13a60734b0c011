package org.roundsman.web.fleet;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.roundsman.fleet.Customers;
import org.roundsman.web.page.Visitor;

/** The fleet view. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class FleetPages {

    private final Boards boards;
    private final Customers customers;
    private final Visitor visitor;

    FleetPages(Boards boards, Customers customers, Visitor visitor) {
        this.boards = boards;
        this.customers = customers;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "fleet")
    static class Templates {
        private Templates() {}

        static native TemplateInstance fleet(Filter filter, Board board);

        static native TemplateInstance board(Board board);
    }

    @GET
    public TemplateInstance fleet(@Context UriInfo uri) {
        BoardAddress address = BoardAddress.of(uri.getQueryParameters());
        Filter filter = Filter.of(address, customers.all(visitor.scope()));
        return Templates.fleet(filter, boards.board(visitor.scope(), address));
    }

    /** The part that refreshes itself; the browser's address follows the filter. */
    @GET
    @Path("board")
    public Response board(@Context UriInfo uri) {
        BoardAddress address = BoardAddress.of(uri.getQueryParameters());
        Board board = boards.board(visitor.scope(), address);
        return Response.ok(Templates.board(board))
                .header("HX-Replace-Url", board.address().link())
                .build();
    }
}
