package org.roundsman.notices.send;

/** A message did not arrive, or we cannot know. */
public final class SendFailure extends Exception {

    private static final long serialVersionUID = 1L;

    private final boolean permanent;
    private final boolean uncertain;

    private SendFailure(String message, boolean permanent, boolean uncertain, Throwable cause) {
        super(message, cause);
        this.permanent = permanent;
        this.uncertain = uncertain;
    }

    /** Trying again is in vain. */
    public static SendFailure permanent(String message, Throwable cause) {
        return new SendFailure(message, true, false, cause);
    }

    /** It did not arrive; it may next time. */
    public static SendFailure passing(String message, Throwable cause) {
        return new SendFailure(message, false, false, cause);
    }

    /** It may have arrived. */
    public static SendFailure uncertain(String message, Throwable cause) {
        return new SendFailure(message, false, true, cause);
    }

    /** Whether trying again is in vain. */
    public boolean permanent() {
        return permanent;
    }

    /** Whether it may have arrived all the same. */
    public boolean uncertain() {
        return uncertain;
    }
}
