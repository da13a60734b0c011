package org.roundsman.firmware;

/**
 * A minimum for a security fix as entered.
 *
 * @param modelId null for all models of the line
 */
public record MinimumDraft(Long modelId, String version, String identifier, String note) {

    MinimumDraft tidy() {
        return new MinimumDraft(modelId, text(version), text(identifier), text(note));
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }
}
