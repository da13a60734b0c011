package org.roundsman.measure;

import java.util.Arrays;

/**
 * How a round ended. A device that does not answer is a value, not an exception. The code is what the readings tables
 * store and is never reused.
 */
public enum Outcome {
    ANSWERED(0, Kind.ANSWERED, "answered"),
    /**
     * Nothing came back. With SNMP v1 and v2c a wrong community looks the same, so the text never claims a wrong
     * password (RFC 3414 Report PDUs exist in v3 only).
     */
    NO_REPLY(1, Kind.UNANSWERED, "no reply: not reachable, or the community or an access list keeps us out"),
    ADDRESS_UNKNOWN(2, Kind.UNANSWERED, "the host name has no address"),
    PORT_CLOSED(3, Kind.UNANSWERED, "the host is there, but nothing listens on that SNMP port"),
    UNREADABLE_REPLY(4, Kind.UNANSWERED, "replies came, but none that could be read as SNMP"),
    USER_UNKNOWN(10, Kind.REFUSED, "the device does not know this SNMP user"),
    WRONG_DIGEST(11, Kind.REFUSED, "wrong authentication password or protocol"),
    PRIVACY_FAILED(12, Kind.REFUSED, "wrong privacy password or protocol"),
    TIME_WINDOW(13, Kind.REFUSED, "boot count or clock out of step, also after synchronising again"),
    LEVEL_UNSUPPORTED(14, Kind.REFUSED, "the device is not set up for this security level"),
    ENGINE_UNKNOWN(15, Kind.REFUSED, "the device's engine ID changed: replaced or reset"),
    ACCESS_DENIED(16, Kind.REFUSED, "signed in, but the device grants no access to what was asked"),
    CONTEXT_UNKNOWN(17, Kind.REFUSED, "the device does not know this SNMP context"),
    VERSION_UNSUPPORTED(18, Kind.REFUSED, "the device does not speak this SNMP version");

    /** What an outcome means for the device's condition. */
    public enum Kind {
        ANSWERED,
        UNANSWERED,
        REFUSED
    }

    private final int code;
    private final Kind kind;
    private final String text;

    Outcome(int code, Kind kind, String text) {
        this.code = code;
        this.kind = kind;
        this.text = text;
    }

    public int code() {
        return code;
    }

    public Kind kind() {
        return kind;
    }

    /** What a person reads; begins in lower case. */
    public String text() {
        return text;
    }

    /**
     * The outcome with that stored code.
     *
     * @throws IllegalArgumentException when no outcome has it
     */
    public static Outcome ofCode(int code) {
        return Arrays.stream(values())
                .filter(o -> o.code == code)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no outcome has code " + code));
    }
}
