package org.roundsman.web.page;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;

/** Headers that tell browsers what pages of ours never do. */
final class SafetyHeaders {

    /** Nothing from elsewhere, no inline script or style, no frame around us, forms go nowhere else. */
    private static final String POLICY = "default-src 'self'; base-uri 'none'; form-action 'self'; "
            + "frame-ancestors 'none'; object-src 'none'; img-src 'self' data:";

    /** Before everything else, so that answers of every kind carry them. */
    private static final int EARLY = 500;

    void register(@Observes Filters filters) {
        filters.register(SafetyHeaders::add, EARLY);
    }

    private static void add(RoutingContext context) {
        boolean https = context.request().isSSL();
        boolean file = isFile(context.normalizedPath());
        context.addHeadersEndHandler(nothing -> fill(context.response().headers(), https, file));
        context.next();
    }

    private static void fill(MultiMap headers, boolean https, boolean file) {
        headers.set("Content-Security-Policy", POLICY);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
        if (https) {
            headers.set("Strict-Transport-Security", "max-age=31536000");
        }
        if (!file) {
            headers.set("Cache-Control", "no-store");
        }
    }

    private static boolean isFile(String path) {
        return path.startsWith("/assets/") || path.startsWith("/webjars/");
    }
}
