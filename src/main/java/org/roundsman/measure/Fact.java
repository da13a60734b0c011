package org.roundsman.measure;

/** What a device says about itself and seldom changes. The key names it in profiles ({@code fact.serial}). */
public enum Fact {
    NAME,
    DESCRIPTION,
    OBJECT_ID,
    LOCATION,
    CONTACT,
    MAKER,
    MODEL,
    SERIAL,
    FIRMWARE,
    HARDWARE_REVISION,
    BASE_MAC,
    ENGINE_ID;

    /** Name in profiles, such as {@code fact.hardware_revision}. */
    public String key() {
        return "fact." + name().toLowerCase(java.util.Locale.ROOT);
    }
}
