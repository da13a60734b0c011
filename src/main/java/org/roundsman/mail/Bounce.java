package org.roundsman.mail;

/**
 * What a mail server says became of a mail of ours for one recipient (RFC 3464).
 *
 * @param key of the letter, from its Message-ID
 * @param recipient whom it was for, as the server writes it
 * @param action what became of it
 * @param why the answer of the other server, or its status code; may be empty
 */
public record Bounce(String key, String recipient, Action action, String why) {

    /** RFC 3464, section 2.3.3. Others, such as {@code delivered}, are no bounces. */
    public enum Action {
        /** It is given up. */
        FAILED,
        /** It is tried further. */
        DELAYED
    }
}
