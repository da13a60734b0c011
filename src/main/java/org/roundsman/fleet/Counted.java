package org.roundsman.fleet;

/** A number with its word. */
final class Counted {

    private Counted() {}

    /** {@code 1 device}, {@code 2 devices}. */
    static String of(long count, String one, String more) {
        return count + " " + (count == 1 ? one : more);
    }
}
