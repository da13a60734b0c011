package org.roundsman.alarms;

/** What is behind an alarm, as worked out from the site's topology. The name is what tables store. */
public enum CauseKind {
    VIEW_LOST("we are blind"),
    UPLINK_LOST("uplink or gateway lost"),
    SWITCH_LOST("switch lost"),
    SWITCH_POWER("switch lost its power"),
    PORT_NOT_DELIVERING("switch port delivers no power"),
    LINK_DOWN("switch port has no link"),
    DEVICE_LOST("device lost"),
    RESTARTED("restarted"),
    RADIO_OFF("radio off"),
    CREDENTIALS_REFUSED("credentials refused"),
    FLAPPING("comes and goes"),
    /** The alarm says it all: nothing had to be worked out. */
    ITSELF(""),
    NOT_SURE("not sure");

    private final String word;

    CauseKind(String word) {
        this.word = word;
    }

    /** The words on pages; empty where the alarm's own title says it all. */
    public String word() {
        return word;
    }
}
