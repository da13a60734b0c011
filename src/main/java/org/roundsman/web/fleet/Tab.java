package org.roundsman.web.fleet;

import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/** The lists of the fleet view. */
enum Tab {
    SITES("sites", "Sites", "site", "sites", null),
    ACCESS_POINTS("access-points", "Access points", "access point", "access points", DeviceKind.ACCESS_POINT),
    SWITCHES("switches", "Switches", "switch", "switches", DeviceKind.NETWORK_SWITCH),
    GATEWAYS("gateways", "Gateways", "gateway", "gateways", DeviceKind.GATEWAY);

    private final String key;
    private final String title;
    private final String one;
    private final String more;
    private final DeviceKind kind;

    Tab(String key, String title, String one, String more, DeviceKind kind) {
        this.key = key;
        this.title = title;
        this.one = one;
        this.more = more;
        this.kind = kind;
    }

    /** What stands in the address. */
    public String key() {
        return key;
    }

    public String title() {
        return title;
    }

    String one() {
        return one;
    }

    String more() {
        return more;
    }

    /** The kind of device in the list, empty for sites. */
    Optional<DeviceKind> kind() {
        return Optional.ofNullable(kind);
    }
}
