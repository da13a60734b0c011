package org.roundsman.web.api;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.fleet.InputRejected;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.people.PeopleException;
import org.roundsman.web.page.OtherErrors;

/** Turns whatever went wrong into a problem. */
@ApplicationScoped
class ApiErrors implements OtherErrors {

    private static final String WHOLE = "";

    private final DescribedApi described;
    private final RoutingContext context;

    ApiErrors(DescribedApi described, RoutingContext context) {
        this.described = described;
        this.context = context;
    }

    @Override
    public boolean expects(Throwable e) {
        return e instanceof ProblemException
                || e instanceof InputRejected
                || e instanceof PeopleException
                || e instanceof NoticeRejected
                || e instanceof DeskRejected;
    }

    @Override
    public Response answer(Throwable e, int status, String text) {
        if (e instanceof ProblemException known) {
            return known.problem().response();
        }
        if (e instanceof InputRejected rejected) {
            return rejected(rejected.faults()).response();
        }
        if (e instanceof NoticeRejected rejected) {
            return rejected(rejected.faults()).response();
        }
        if (e instanceof DeskRejected rejected) {
            return Problem.of(ProblemKind.IN_USE, rejected.getMessage()).response();
        }
        if (e instanceof PeopleException refused) {
            return rejected(Map.of(refused.field(), refused.getMessage())).response();
        }
        ProblemKind kind = ProblemKind.of(status);
        String detail = kind == ProblemKind.OUR_FAULT || kind == ProblemKind.AWAY ? text : kind.meaning();
        Problem problem = new Problem(kind.type(), kind.title(), status, detail, java.util.List.of());
        return kind == ProblemKind.NO_SUCH_METHOD ? withMethods(problem) : problem.response();
    }

    /** RFC 9110, section 15.5.6: such an answer must say which methods the address takes. */
    private Response withMethods(Problem problem) {
        return Response.fromResponse(problem.response())
                .header(HttpHeaders.ALLOW, String.join(", ", described.methods(context.normalizedPath())))
                .build();
    }

    /** What was asked for is gone: 404. Something else stands against it: 409. Fields are to be mended: 422. */
    private static Problem rejected(Map<String, String> faults) {
        if (faults.containsKey("id")) {
            return Problem.of(ProblemKind.NOT_FOUND, faults.get("id"));
        }
        if (faults.size() == 1 && faults.containsKey(WHOLE)) {
            return Problem.of(ProblemKind.IN_USE, faults.get(WHOLE));
        }
        return Problem.refused(new LinkedHashMap<>(faults));
    }
}
