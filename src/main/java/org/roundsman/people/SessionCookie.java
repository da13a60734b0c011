package org.roundsman.people;

/**
 * The cookie that holds a session's token. Over https it carries the {@code __Host-} prefix, which browsers accept only
 * with Secure, with Path=/ and without a domain (RFC 6265bis, section 4.1.3.2).
 */
public final class SessionCookie {

    private SessionCookie() {}

    /** Its name. */
    public static String nameFor(boolean https) {
        return https ? "__Host-roundsman" : "roundsman";
    }
}
