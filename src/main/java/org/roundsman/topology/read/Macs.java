package org.roundsman.topology.read;

/** Which MAC addresses say where a device is. */
final class Macs {

    private Macs() {}

    /**
     * Whether it can belong to one device only: not empty, not all zeros, no group address, and none of the addresses
     * that routers of a group share (00-00-5E-00-01-xx and 00-00-5E-00-02-xx, RFC 5798).
     */
    static boolean ownedByOne(String mac) {
        if (mac.isEmpty() || mac.equals("00:00:00:00:00:00")) {
            return false;
        }
        boolean group = (Integer.parseInt(mac.substring(0, 2), 16) & 1) != 0;
        return !group && !mac.startsWith("00:00:5e:00:01:") && !mac.startsWith("00:00:5e:00:02:");
    }
}
