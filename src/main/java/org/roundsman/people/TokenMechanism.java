package org.roundsman.people;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.Set;

/**
 * Knows a program by the personal token in its Authorization header (RFC 6750, section 2.1), for addresses of the API and
 * for no page. A token in a form or in the address is none.
 */
@ApplicationScoped
class TokenMechanism implements HttpAuthenticationMechanism {

    private static final String REFUSAL = "roundsman.token-refusal";
    private static final String SCHEME = "Bearer ";

    private final TokenRefusals refusals;

    TokenMechanism(TokenRefusals refusals) {
        this.refusals = refusals;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        Optional<String> token = ApiAddress.is(context) ? token(context) : Optional.empty();
        if (token.isEmpty()) {
            return Uni.createFrom().nullItem();
        }
        String from = context.request().remoteAddress().hostAddress();
        return providers
                .authenticate(new TokenRequest(token.get(), from))
                .onFailure(AuthenticationFailedException.class)
                .invoke(e -> context.put(REFUSAL, TokenRefused.why((AuthenticationFailedException) e)))
                .onFailure(AuthenticationFailedException.class)
                .recoverWithNull();
    }

    private static Optional<String> token(RoutingContext context) {
        String header = context.request().getHeader("Authorization");
        boolean bearer = header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length());
        return bearer ? Optional.of(header.substring(SCHEME.length()).strip()) : Optional.empty();
    }

    @Override
    public Uni<Boolean> sendChallenge(RoutingContext context) {
        if (!ApiAddress.is(context)) {
            return Uni.createFrom().item(false);
        }
        TokenCheck.Refusal refusal = context.get(REFUSAL);
        refusals.answer(context, refusal == null ? new TokenCheck.Missing() : refusal);
        return Uni.createFrom().item(true);
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return ApiAddress.is(context)
                ? Uni.createFrom().item(new ChallengeData(401, "WWW-Authenticate", "Bearer"))
                : Uni.createFrom().nullItem();
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(TokenRequest.class);
    }

    @Override
    public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext context) {
        return Uni.createFrom().item(new HttpCredentialTransport(HttpCredentialTransport.Type.AUTHORIZATION, "bearer"));
    }
}
