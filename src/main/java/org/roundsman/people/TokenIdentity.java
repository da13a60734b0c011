package org.roundsman.people;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import org.jboss.logging.Logger;

/** Looks up who stands behind a personal token. */
@ApplicationScoped
class TokenIdentity implements IdentityProvider<TokenRequest> {

    private static final Logger LOG = Logger.getLogger(TokenIdentity.class);

    private final TokenHolders holders;
    private final TokenBrake brake;

    TokenIdentity(TokenHolders holders, TokenBrake brake) {
        this.holders = holders;
        this.brake = brake;
    }

    @Override
    public Class<TokenRequest> getRequestType() {
        return TokenRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(TokenRequest request, AuthenticationRequestContext context) {
        long waits = brake.waits(request.from(), request.token());
        return waits > 0
                ? Uni.createFrom().failure(TokenRefused.because(new TokenCheck.Braked(waits)))
                : context.runBlocking(() -> looked(request));
    }

    private SecurityIdentity looked(TokenRequest request) {
        TokenCheck check = check(request);
        if (check instanceof TokenCheck.Good good) {
            brake.worked(request.token());
            return identity(good);
        }
        if (!(check instanceof TokenCheck.Away) && brake.failed(request.from(), request.token())) {
            LOG.warnf("Many wrong tokens from %s: further ones wait a minute", LogText.of(request.from()));
        }
        throw TokenRefused.because((TokenCheck.Refusal) check);
    }

    private TokenCheck check(TokenRequest request) {
        try {
            return holders.check(request.token(), request.from());
        } catch (RuntimeException e) {
            LOG.warnf("A token could not be looked up: %s", e.getMessage());
            return new TokenCheck.Away();
        }
    }

    private static SecurityIdentity identity(TokenCheck.Good good) {
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(good.person().name()))
                .addRole(good.person().role().name())
                .addAttribute(SignedIn.attribute(), good.person())
                .addAttribute(UsedToken.attribute(), good.token())
                .build();
    }
}
