package org.roundsman.timeline;

/** What sort of thing happened. The name is what the table stores and is never reused. */
public enum EventKind {
    /** A fact that the device says about itself has another value: firmware, serial, model, address. */
    FACT_CHANGED("facts"),
    /** A radio appeared, disappeared, or has another name or address. */
    RADIO_CHANGED("radios"),
    /** An SSID appeared on the device, or disappeared from it. */
    NETWORK_CHANGED("networks"),
    /** The device started again. */
    RESTARTED("restarts"),
    /** The device sent a notification: a trap or an inform (RFC 3416). */
    NOTIFICATION("notifications"),
    /** It was found at another address. */
    ADDRESS_CHANGED("address"),
    /** It hangs on another switch port, or a person said so. */
    PORT_CHANGED("wiring"),
    /** It came into the fleet, or back into it. */
    ADOPTED("fleet"),
    /** It is read by other profiles than before. */
    PROFILES_CHANGED("profiles"),
    /** Other credentials are used for it. */
    CREDENTIALS_CHANGED("credentials");

    private final String word;

    EventKind(String word) {
        this.word = word;
    }

    /** What a page calls this sort of event. */
    public String word() {
        return word;
    }
}
