package org.roundsman.web.signin;

import java.net.URI;
import java.net.URISyntaxException;

/** Where to go after signing in: a page of ours, never another site. */
final class LocalAddress {

    private LocalAddress() {}

    /** The address when it is a path of ours, or the fleet view. */
    static String of(String address) {
        boolean path = address.startsWith("/") && !address.startsWith("//") && !address.contains("\\");
        return path && isUri(address) ? address : "/";
    }

    private static boolean isUri(String address) {
        try {
            URI uri = new URI(address);
            return uri.getHost() == null && uri.getScheme() == null;
        } catch (URISyntaxException e) {
            return false;
        }
    }
}
