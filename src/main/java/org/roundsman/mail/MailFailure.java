package org.roundsman.mail;

/** A mail was not taken, as far as we know. */
public final class MailFailure extends Exception {

    private static final long serialVersionUID = 1L;

    private final boolean permanent;
    private final boolean uncertain;

    MailFailure(String message, boolean permanent, boolean uncertain, Throwable cause) {
        super(message, cause);
        this.permanent = permanent;
        this.uncertain = uncertain;
    }

    /** Whether the server may have taken it all the same: it fell silent while or after it got the mail. */
    public boolean uncertain() {
        return uncertain;
    }

    /** Whether trying the same again is in vain: the server said so (5yz, RFC 5321 section 4.2.1), or the address is none. */
    public boolean permanent() {
        return permanent;
    }
}
