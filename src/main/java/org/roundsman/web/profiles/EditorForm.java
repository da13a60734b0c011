package org.roundsman.web.profiles;

import org.jboss.resteasy.reactive.RestForm;

/**
 * What the editor's form sends.
 *
 * @param profile id of the profile that is changed, or empty for a new one
 * @param basedOn the version that was changed, or empty
 * @param walk id of the stored walk to try it on, or empty
 */
record EditorForm(
        @RestForm String profile,
        @RestForm String text,
        @RestForm String note,
        @RestForm String basedOn,
        @RestForm String walk) {

    /** With line ends as files have them: browsers send CR LF. */
    String lines() {
        return text == null ? "" : text.replace("\r\n", "\n");
    }

    String noted() {
        return note == null ? "" : note.strip();
    }

    public long profileId() {
        return number(profile);
    }

    int base() {
        return (int) number(basedOn);
    }

    long walkId() {
        return number(walk);
    }

    private static long number(String text) {
        return text != null && text.matches("\\d{1,15}") ? Long.parseLong(text) : 0;
    }

    static EditorForm fresh(String text, long walk) {
        return new EditorForm("", text, "", "", walk == 0 ? "" : String.valueOf(walk));
    }
}
