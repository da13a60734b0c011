package org.roundsman.snmp;

/** Why a received message is not taken as a notification. */
public enum NotificationRefusal {
    UNKNOWN_SENDER("no device has this address"),
    WRONG_COMMUNITY("the community fits none of the credentials of the device"),
    UNKNOWN_USER("none of the credentials of the device has this SNMP user"),
    LEVEL_UNSUPPORTED("less protected than the credentials of the device ask for"),
    WRONG_DIGEST("wrong authentication password or protocol"),
    TIME_WINDOW("boot count or clock out of step: late, or sent again by somebody"),
    PRIVACY_FAILED("wrong privacy password or protocol"),
    DOUBTFUL("several devices have this address, and nothing tells which of them sent it"),
    NO_NOTIFICATION("no notification, or not readable");

    private final String text;

    NotificationRefusal(String text) {
        this.text = text;
    }

    /** What a person reads; begins in lower case. */
    public String text() {
        return text;
    }
}
