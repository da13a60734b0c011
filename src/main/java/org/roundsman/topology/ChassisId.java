package org.roundsman.topology;

import java.util.Arrays;

/**
 * By what a device calls itself in LLDP.
 *
 * @param kind LldpChassisIdSubtype of IEEE 802.1AB, 1 to 7
 * @param octets as they came
 */
public record ChassisId(int kind, byte[] octets) {

    public ChassisId {
        octets = octets.clone();
    }

    @Override
    public byte[] octets() {
        return octets.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ChassisId id && id.kind == kind && Arrays.equals(id.octets, octets);
    }

    @Override
    public int hashCode() {
        return 31 * kind + Arrays.hashCode(octets);
    }

    @Override
    public String toString() {
        return LldpId.chassis(kind, octets).words();
    }
}
