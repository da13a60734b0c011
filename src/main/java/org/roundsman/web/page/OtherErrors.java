package org.roundsman.web.page;

import jakarta.ws.rs.core.Response;

/** Says what went wrong where no page was asked for. Implemented by the API. */
public interface OtherErrors {

    /** Whether this is an answer rather than a failure, so that no log need tell about it. */
    boolean expects(Throwable e);

    /**
     * The answer.
     *
     * @param status HTTP status as far as it is known from outside of the API
     * @param text what to do, in plain words, or empty
     */
    Response answer(Throwable e, int status, String text);
}
