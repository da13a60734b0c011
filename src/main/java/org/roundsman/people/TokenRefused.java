package org.roundsman.people;

import io.quarkus.security.AuthenticationFailedException;
import java.util.Map;

/** A failed authentication that knows why the personal token opens nothing. */
final class TokenRefused {

    private static final String WHY = "roundsman.token-refusal";

    private TokenRefused() {}

    static AuthenticationFailedException because(TokenCheck.Refusal why) {
        return new AuthenticationFailedException(Map.<String, Object>of(WHY, why));
    }

    static TokenCheck.Refusal why(AuthenticationFailedException e) {
        TokenCheck.Refusal why = e.getAttribute(WHY);
        return why == null ? new TokenCheck.Unknown() : why;
    }
}
