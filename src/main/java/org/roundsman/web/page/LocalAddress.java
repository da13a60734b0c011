package org.roundsman.web.page;

import java.net.URI;
import java.net.URISyntaxException;

/** Where to go next: a page of ours, never another site. */
public final class LocalAddress {

    private LocalAddress() {}

    /** The address when it is a path of ours, or the fleet view. */
    public static String of(String address) {
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
