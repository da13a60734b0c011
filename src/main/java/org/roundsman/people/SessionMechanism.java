package org.roundsman.people;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * Knows a browser by the token in its cookie, and sends those it does not know to the sign-in page. The API takes no
 * cookies: a page elsewhere that makes a browser send a request there sends nothing that opens it.
 */
@ApplicationScoped
class SessionMechanism implements HttpAuthenticationMechanism {

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        Cookie cookie = context.request()
                .getCookie(SessionCookie.nameFor(context.request().isSSL()));
        if (ApiAddress.is(context) || cookie == null || cookie.getValue().isBlank()) {
            return Uni.createFrom().nullItem();
        }
        // A token that ran out is no failure: the pages that need nobody signed in must still open.
        return providers
                .authenticate(new SessionRequest(cookie.getValue()))
                .onFailure(AuthenticationFailedException.class)
                .recoverWithNull();
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        if (ApiAddress.is(context)) {
            return Uni.createFrom().nullItem();
        }
        HttpServerRequest request = context.request();
        String target = "/sign-in" + (request.method() == HttpMethod.GET ? "?next=" + encoded(request.uri()) : "");
        if (request.getHeader("HX-Request") != null) {
            return Uni.createFrom().item(new ChallengeData(401, "HX-Redirect", "/sign-in"));
        }
        return Uni.createFrom().item(new ChallengeData(302, "Location", target));
    }

    private static String encoded(String uri) {
        return URLEncoder.encode(uri, StandardCharsets.UTF_8);
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(SessionRequest.class);
    }

    @Override
    public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext context) {
        String cookie = SessionCookie.nameFor(context.request().isSSL());
        return Uni.createFrom().item(new HttpCredentialTransport(HttpCredentialTransport.Type.COOKIE, cookie));
    }
}
