package org.roundsman.fleet;

import java.util.Map;

/**
 * A device as entered.
 *
 * @param host address or host name
 * @param port UDP port
 * @param modelId null where not known
 * @param intervalSeconds seconds between two rounds, 10 to 3600
 */
public record DeviceDraft(
        String name,
        DeviceKind kind,
        String host,
        int port,
        Long credentialId,
        Long modelId,
        String place,
        int intervalSeconds,
        boolean paused) {

    /** What is stored of a device. */
    public static DeviceDraft of(Device device) {
        return new DeviceDraft(
                device.name,
                device.kind,
                device.host,
                device.port,
                device.credential.id,
                device.model == null ? null : device.model.id,
                device.place,
                device.intervalSeconds,
                device.paused);
    }

    /** The same at another UDP port. */
    public DeviceDraft atPort(int other) {
        return new DeviceDraft(name, kind, host, other, credentialId, modelId, place, intervalSeconds, paused);
    }

    /** The same of another model. */
    public DeviceDraft ofModel(long model) {
        return new DeviceDraft(name, kind, host, port, credentialId, model, place, intervalSeconds, paused);
    }

    /** What is wrong with it by itself, by field; empty when nothing is. What else the fleet holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    void check(InputCheck check) {
        check.text("name", name, 1, 120);
        check.that("kind", kind != null, "choose access point, switch or gateway");
        check.text("place", place, 0, 200);
        check.that(
                "host",
                HostNames.valid(host),
                "neither an IPv4 or IPv6 address nor a host name; write 192.0.2.17, 2001:db8::17 or ap-3.example");
        check.range("port", port, 1, 65535);
        check.that("credentialId", credentialId != null, "choose the SNMP credentials this device knows");
        check.range("intervalSeconds", intervalSeconds, 10, 3600);
    }
}
