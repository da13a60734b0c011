package org.roundsman.web.api;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.fleet.InputRejected;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.people.PeopleException;
import org.roundsman.web.page.OtherErrors;

/** Turns whatever went wrong into a problem. */
@ApplicationScoped
class ApiErrors implements OtherErrors {

    private static final String WHOLE = "";

    @Override
    public boolean expects(Throwable e) {
        return e instanceof ProblemException
                || e instanceof InputRejected
                || e instanceof PeopleException
                || e instanceof NoticeRejected;
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
        if (e instanceof PeopleException refused) {
            return rejected(Map.of(refused.field(), refused.getMessage())).response();
        }
        ProblemKind kind = ProblemKind.of(status);
        String detail = kind == ProblemKind.OUR_FAULT || kind == ProblemKind.AWAY ? text : kind.meaning();
        Problem problem = new Problem(kind.type(), kind.title(), status, detail, java.util.List.of());
        Response.ResponseBuilder answer = Response.fromResponse(problem.response());
        if (e instanceof WebApplicationException web
                && web.getResponse().getHeaders().containsKey(HttpHeaders.ALLOW)) {
            answer.header(HttpHeaders.ALLOW, web.getResponse().getHeaderString(HttpHeaders.ALLOW));
        }
        return answer.build();
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
