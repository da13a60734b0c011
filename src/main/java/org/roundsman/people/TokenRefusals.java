package org.roundsman.people;

import io.vertx.ext.web.RoutingContext;

/** Answers API requests whose token opens nothing. Implemented where answers of the API are written. */
public interface TokenRefusals {

    /** Writes the whole answer and ends it. Runs on an event loop and must not block. */
    void answer(RoutingContext request, TokenCheck.Refusal refusal);
}
