package org.roundsman.demo;

import java.util.List;
import java.util.Set;
import org.roundsman.fleet.DeviceKind;

/**
 * One invented device.
 *
 * @param number its place in the fleet, from 0 without gaps
 * @param site number of its site
 * @param name unique in its site; the first label of its host name under .example
 * @param fullName what the agent calls itself (sysName)
 * @param place room, ceiling or mast
 * @param host loopback address of its agent
 * @param credential what the service is told
 * @param accepts what the agent really lets in; differs where a wrong credential is the fault
 * @param mac base address, 6 octets as a number
 * @param peak clients at the busiest hour of an ordinary week; 0 for switches and gateways
 * @param radios by number, from 1
 * @param standing faults that it has at all times
 */
public record DemoDevice(
        int number,
        int site,
        DemoModel model,
        String name,
        String fullName,
        String place,
        String host,
        int port,
        DemoCredential credential,
        DemoCredential accepts,
        String serial,
        long mac,
        int peak,
        List<DemoRadio> radios,
        Set<Fault> standing) {

    public DemoDevice {
        radios = List.copyOf(radios);
        standing = Set.copyOf(standing);
    }

    public DeviceKind kind() {
        return model.kind();
    }

    /** The serial number of the unit that stands there while {@link Fault#UNIT_SWAPPED} is on. */
    public String swappedSerial() {
        return serial + "-R";
    }

    public boolean isAccessPoint() {
        return kind() == DeviceKind.ACCESS_POINT;
    }
}
