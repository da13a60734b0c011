package org.roundsman.snmp;

/**
 * A profile as it was written.
 *
 * @param file its file or name, for messages
 * @param text YAML
 */
public record ProfileText(String file, String text, Origin origin) {

    /** Where a profile comes from. */
    public enum Origin {
        /** Part of the program. */
        SHIPPED("shipped"),
        /** A file in a folder that the settings name. */
        FOLDER("from a folder"),
        /** Written by people in this service. */
        WRITTEN("written here");

        private final String word;

        Origin(String word) {
            this.word = word;
        }

        /** The word on pages. */
        public String word() {
            return word;
        }
    }
}
