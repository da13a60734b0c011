package org.roundsman.web.signin;

import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.NewCookie;
import java.util.Optional;
import org.roundsman.people.SessionCookie;

/** The browser's side of a session. Its end is kept by the server: the cookie lasts while the browser runs. */
@RequestScoped
class Cookies {

    private final RoutingContext context;

    Cookies(RoutingContext context) {
        this.context = context;
    }

    NewCookie of(String token) {
        return cookie(token).build();
    }

    NewCookie gone() {
        return cookie("").maxAge(0).build();
    }

    Optional<String> token() {
        return Optional.ofNullable(context.request().getCookie(name())).map(Cookie::getValue);
    }

    /** Lax: links to a page, in a ticket or a mail, still open it; every change is a POST with its own token. */
    private NewCookie.Builder cookie(String value) {
        return new NewCookie.Builder(name())
                .value(value)
                .path("/")
                .httpOnly(true)
                .secure(context.request().isSSL())
                .sameSite(NewCookie.SameSite.LAX);
    }

    private String name() {
        return SessionCookie.nameFor(context.request().isSSL());
    }
}
