package org.roundsman.people;

import io.quarkus.security.identity.request.BaseAuthenticationRequest;

/** Asks who holds that token. */
final class SessionRequest extends BaseAuthenticationRequest {

    private final String token;

    SessionRequest(String token) {
        this.token = token;
    }

    String token() {
        return token;
    }
}
