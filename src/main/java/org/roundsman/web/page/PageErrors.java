package org.roundsman.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.ForbiddenException;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.sql.SQLException;
import java.util.UUID;
import java.util.function.Predicate;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.roundsman.people.ApiAddress;

/** Turns whatever went wrong into an answer that says what to do, and tells nothing about our insides: a page, or for the API a problem. */
final class PageErrors {

    private static final Logger LOG = Logger.getLogger(PageErrors.class);

    private final Trouble trouble;
    private final RoutingContext context;
    private final OtherErrors others;

    PageErrors(Trouble trouble, RoutingContext context, OtherErrors others) {
        this.trouble = trouble;
        this.context = context;
        this.others = others;
    }

    @CheckedTemplate(basePath = "error")
    static class Templates {
        private Templates() {}

        static native TemplateInstance error(int status, String title, String text);
    }

    @ServerExceptionMapper
    public Response notFound(NotFoundException e) {
        return answer(e, 404, "There is no such page", "It may have been removed, or it is not yours to see.");
    }

    @ServerExceptionMapper
    public Response forbidden(ForbiddenException e) {
        return answer(
                e, 403, "This page is not for you", "Your account has no right to it. Ask the owner if it should.");
    }

    @ServerExceptionMapper
    public Response refused(WebApplicationException e) {
        int status = e.getResponse().getStatus();
        if (status >= 300 && status < 400) {
            return e.getResponse();
        }
        if (status == 413) {
            return answer(
                    e, 413, "That is too large", "The request is larger than this address takes. Nothing was changed.");
        }
        return status >= 500
                ? failed(e)
                : answer(e, status, "That did not work", "The request could not be understood.");
    }

    @ServerExceptionMapper
    public Response failed(Throwable e) {
        if (ApiAddress.is(context) && others.expects(e)) {
            return answer(e, 422, "That did not work", "");
        }
        if (noDatabase(e)) {
            LOG.warnf("A page could not be made, the database does not answer: %s", e.getMessage());
            return answer(e, 503, "The database does not answer", trouble.withoutDatabase());
        }
        if (badCharacter(e)) {
            return answer(e, 400, "That did not work", "The request holds a character that no text can have.");
        }
        String number = UUID.randomUUID().toString().substring(0, 8);
        LOG.errorf(e, "A page failed (%s)", number);
        return answer(
                e, 500, "Something went wrong on our side", "The log of the service tells more under " + number + ".");
    }

    /** Connection lost or refused (SQLSTATE class 08), shutting down (57P), too many connections (53300), or none in time. */
    static boolean noDatabase(Throwable e) {
        return hasFault(e, PageErrors::lost);
    }

    /** PostgreSQL takes every character but U+0000 (SQLSTATE 22021). */
    static boolean badCharacter(Throwable e) {
        return hasFault(e, sql -> "22021".equals(sql.getSQLState()));
    }

    private static boolean hasFault(Throwable e, Predicate<SQLException> which) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && which.test(sql)) {
                return true;
            }
        }
        return false;
    }

    private static boolean lost(SQLException e) {
        String state = e.getSQLState() == null ? "" : e.getSQLState();
        boolean waitedInVain = e.getMessage() != null && e.getMessage().contains("Acquisition timeout");
        return state.startsWith("08") || state.startsWith("57P") || state.equals("53300") || waitedInVain;
    }

    private Response answer(Throwable e, int status, String title, String text) {
        return ApiAddress.is(context) ? others.answer(e, status, text) : page(status, title, text);
    }

    private static Response page(int status, String title, String text) {
        return Response.status(status)
                .entity(Templates.error(status, title, text).render())
                .type(MediaType.TEXT_HTML_TYPE.withCharset("utf-8"))
                .build();
    }
}
