package org.roundsman.audit;

/**
 * Who stands behind a change.
 *
 * @param name sign-in name, or {@code roundsman} where nobody stands behind it
 * @param accountId null where nobody stands behind it
 * @param token name of the personal token that was used, or empty
 * @param address where the request came from, or empty
 */
public record Actor(String name, Long accountId, Via via, String token, String address) {

    /** The way by which a change came in. */
    public enum Via {
        /** A page in a browser. */
        PAGE("page"),
        /** The JSON API. */
        API("API"),
        /** A command on the machine that runs the service. */
        COMMAND("command"),
        /** The service by itself: at its start, on schedule, or because a device said something new. */
        ITSELF("the service itself");

        private final String word;

        Via(String word) {
            this.word = word;
        }

        /** The word on pages. */
        public String word() {
            return word;
        }
    }

    private static final Actor ITSELF = new Actor("roundsman", null, Via.ITSELF, "", "");

    /** The service, where nobody stands behind a change. */
    public static Actor itself() {
        return ITSELF;
    }
}
