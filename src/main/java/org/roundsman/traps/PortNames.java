package org.roundsman.traps;

import java.util.Map;

/**
 * What the wiring calls the ports of a device. A port owned by those who ask: notifications say the number of an interface,
 * which nobody knows, and traps themselves know no wiring.
 */
public interface PortNames {

    /**
     * The ports of a device in words, such as {@code port 13 (garden-ap-09)}, by ifIndex (IF-MIB, RFC 2863). Empty when
     * there is no such device, or its wiring was not read yet. Asks the database, so not for a thread that receives. For the
     * service itself, which shows nothing of it to somebody without checking the customer scope.
     */
    Map<Integer, String> of(long deviceId);
}
