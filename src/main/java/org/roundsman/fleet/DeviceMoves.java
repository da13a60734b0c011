package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.Panache;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Gives devices other addresses, or other sites of the same customer; their past stays with them. */
@ApplicationScoped
@Transactional
public class DeviceMoves {

    private final AuditTrail audit;
    private final Event<FleetChanged> changed;

    @Inject
    DeviceMoves(AuditTrail audit, Event<FleetChanged> changed) {
        this.audit = audit;
        this.changed = changed;
    }

    /**
     * Where a device arrives, and as what.
     *
     * @param credentialId which to use if its own may not be used there
     */
    public record Move(
            long deviceId, long siteId, String host, int port, String name, String place, long credentialId) {}

    /**
     * Moves all of them, also such as swap their addresses, or none.
     *
     * @return the devices by their ids
     * @throws InputRejected naming each field that cannot be taken, with the device's id: {@code name-17}
     */
    public Map<Long, Device> move(List<Move> moves) {
        Map<Long, Device> devices = new LinkedHashMap<>();
        Map<Long, FieldSet> before = new HashMap<>();
        Map<String, String> faults = new LinkedHashMap<>();
        for (Move move : moves) {
            Device device = Device.findById(move.deviceId());
            if (device == null) {
                faults.put("id-" + move.deviceId(), "this device is not there any more");
            } else {
                devices.put(device.id, device);
                before.put(device.id, FleetFields.of(device));
                // Until all have left, the address of one may be where another wants to go.
                device.host = "moving-" + device.id + ".invalid";
            }
        }
        refuse(faults);
        Panache.getEntityManager().flush();
        for (Move move : moves) {
            faults.putAll(arrive(move, devices.get(move.deviceId())));
        }
        refuse(faults);
        devices.values()
                .forEach(device ->
                        audit.changed(FleetFields.subject(device), before.get(device.id), FleetFields.of(device)));
        changed.fire(new FleetChanged());
        return devices;
    }

    private static Map<String, String> arrive(Move move, Device device) {
        InputCheck check = new InputCheck();
        Site site = Site.findById(move.siteId());
        check.that(
                "id",
                site != null && site.customer.id.equals(device.site.customer.id),
                "a device moves between sites of one customer only");
        check.text("name", move.name(), 1, 120);
        check.text("place", move.place(), 0, 200);
        check.that("host", HostNames.valid(move.host()), "neither an address nor a host name");
        check.range("port", move.port(), 1, 65_535);
        Map<String, String> faults = faults(check, device);
        return faults.isEmpty() ? settle(move, device, site) : faults;
    }

    private static Map<String, String> settle(Move move, Device device, Site site) {
        InputCheck check = new InputCheck();
        String name = move.name().strip();
        check.that(
                "name",
                !taken(device, site, "lower(name) = lower(?3)", name),
                "this site has a device of this name already");
        check.that(
                "host",
                !taken(device, site, "host = ?3 and port = " + move.port(), move.host()),
                "this site has a device with this address and port already");
        boolean keeps = device.credential.usableAt(site.id, site.customer.id);
        Credential credential = keeps ? device.credential : Credential.findById(move.credentialId());
        check.that("id", credential != null, "the credentials are not there any more");
        Map<String, String> faults = faults(check, device);
        if (faults.isEmpty()) {
            device.site = site;
            device.name = name;
            device.place = move.place().strip();
            device.host = move.host();
            device.port = move.port();
            device.credential = credential;
            Panache.getEntityManager().flush();
        }
        return faults;
    }

    private static Map<String, String> faults(InputCheck check, Device device) {
        Map<String, String> faults = new LinkedHashMap<>();
        try {
            check.done();
        } catch (InputRejected e) {
            e.faults().forEach((field, text) -> faults.put(field + "-" + device.id, text));
        }
        return faults;
    }

    private static void refuse(Map<String, String> faults) {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    private static boolean taken(Device device, Site site, String same, Object value) {
        return Device.count("site = ?1 and id <> ?2 and " + same, site, device.id, value) > 0;
    }
}
