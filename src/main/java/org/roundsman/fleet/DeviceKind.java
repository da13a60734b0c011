package org.roundsman.fleet;

/** What a polled device is. */
public enum DeviceKind {
    ACCESS_POINT("access point"),
    NETWORK_SWITCH("switch"),
    GATEWAY("gateway");

    private final String word;

    DeviceKind(String word) {
        this.word = word;
    }

    /** The word on pages. */
    public String word() {
        return word;
    }
}
