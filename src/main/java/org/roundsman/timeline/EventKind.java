package org.roundsman.timeline;

/** What sort of thing happened. The name is what the table stores and is never reused. */
public enum EventKind {
    /** A fact that the device says about itself has another value: firmware, serial, model, address. */
    FACT_CHANGED("facts", "fact"),
    /** A radio appeared, disappeared, or has another name or address. */
    RADIO_CHANGED("radios", "radio"),
    /** An SSID appeared on the device, or disappeared from it. */
    NETWORK_CHANGED("networks", "network"),
    /** The device started again. */
    RESTARTED("restarts", "restart"),
    /** The device sent a notification: a trap or an inform (RFC 3416). */
    NOTIFICATION("notifications", "notification"),
    /** It was found at another address. */
    ADDRESS_CHANGED("address", "address"),
    /** It hangs on another switch port, or a person said so. */
    PORT_CHANGED("wiring", "wiring"),
    /** It came into the fleet, or back into it. */
    ADOPTED("fleet", "fleet"),
    /** It is read by other profiles than before. */
    PROFILES_CHANGED("profiles", "profiles"),
    /** Other credentials are used for it. */
    CREDENTIALS_CHANGED("credentials", "credentials"),
    /** A person put another unit in its place. */
    UNIT_REPLACED("units", "unit");

    private final String word;
    private final String one;

    EventKind(String word, String one) {
        this.word = word;
        this.one = one;
    }

    /** What a page calls this sort of event. */
    public String word() {
        return word;
    }

    /** What a page calls one event of this sort. */
    public String one() {
        return one;
    }
}
