package org.roundsman.people;

import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.vertx.ext.web.RoutingContext;

/**
 * Tells addresses of the API from those of pages. Everything below /api/ is the API's but its two kinds of pages for
 * people, which show no data: the guide and the explanations of problems.
 */
public final class ApiAddress {

    private ApiAddress() {}

    /** Whether personal tokens, and nothing else, open this address. */
    public static boolean is(RoutingContext request) {
        String path = HttpSecurityUtils.pathWithoutMatrixParams(request.normalizedPath());
        boolean api = path.equals("/api") || path.startsWith("/api/");
        return api && !page(path);
    }

    private static boolean page(String path) {
        return path.equals("/api/docs") || path.equals("/api/problems") || path.startsWith("/api/problems/");
    }
}
