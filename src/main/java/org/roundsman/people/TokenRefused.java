package org.roundsman.people;

import io.quarkus.security.AuthenticationFailedException;

/** A personal token opens nothing. */
final class TokenRefused extends AuthenticationFailedException {

    private static final long serialVersionUID = 1L;

    private final transient TokenCheck.Refusal refusal;

    TokenRefused(TokenCheck.Refusal refusal) {
        this.refusal = refusal;
    }

    TokenCheck.Refusal refusal() {
        return refusal;
    }
}
