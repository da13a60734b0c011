package org.roundsman.measure;

/** What a metric is measured of. */
public enum Subject {
    /** The whole unit: access point, switch or gateway. */
    DEVICE,
    /** One transmitter of an access point (the word as in RFC 5415). */
    RADIO,
    /** One SSID on one access point. */
    NETWORK
}
