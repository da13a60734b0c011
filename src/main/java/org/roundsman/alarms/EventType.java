package org.roundsman.alarms;

/** Event types of ITU-T X.733, as far as they are used here. */
public enum EventType {
    COMMUNICATIONS("communications"),
    QUALITY_OF_SERVICE("quality of service"),
    PROCESSING_ERROR("processing error"),
    EQUIPMENT("equipment"),
    /** ITU-T X.736. */
    SECURITY("security");

    private final String word;

    EventType(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
