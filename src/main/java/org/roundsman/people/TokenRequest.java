package org.roundsman.people;

import io.quarkus.security.identity.request.BaseAuthenticationRequest;

/** Asks who stands behind that personal token. */
final class TokenRequest extends BaseAuthenticationRequest {

    private final String token;
    private final String from;

    TokenRequest(String token, String from) {
        this.token = token;
        this.from = from;
    }

    String token() {
        return token;
    }

    /** Address that the request came from. */
    String from() {
        return from;
    }
}
