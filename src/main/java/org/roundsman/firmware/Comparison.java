package org.roundsman.firmware;

/**
 * How one version stands to another.
 *
 * @param reason why they cannot be compared; empty where they can
 */
public record Comparison(Outcome outcome, String reason) {

    /** Of the first version, seen from the second. */
    public enum Outcome {
        OLDER,
        /** In the order of the line; the texts may differ. */
        SAME,
        NEWER,
        CANNOT_BE_COMPARED
    }

    static Comparison of(int order) {
        return new Comparison(order < 0 ? Outcome.OLDER : order > 0 ? Outcome.NEWER : Outcome.SAME, "");
    }

    static Comparison cannot(Version.Unreadable version) {
        return new Comparison(
                Outcome.CANNOT_BE_COMPARED, "“" + version.text() + "” cannot be compared: " + version.reason());
    }

    public boolean possible() {
        return outcome != Outcome.CANNOT_BE_COMPARED;
    }
}
