package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.Panache;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Map;

/**
 * Gives devices other addresses, or other sites of the same customer; their past stays with them. Several that swap
 * addresses first {@link #leave} them all, then {@link #arrive} one by one, in one transaction of the caller.
 */
@ApplicationScoped
@Transactional(Transactional.TxType.MANDATORY)
public class DeviceMoves {

    private final Event<FleetChanged> changed;

    @Inject
    DeviceMoves(Event<FleetChanged> changed) {
        this.changed = changed;
    }

    /**
     * Where a device arrives.
     *
     * @param credentialId which to use if its own may not be used there
     */
    public record Arrival(long deviceId, long siteId, String host, int port, long credentialId) {}

    /** Frees the addresses of these devices, until each arrives. */
    public void leave(Collection<Long> deviceIds) {
        for (long id : deviceIds) {
            require(id).host = "moving-" + id + ".invalid";
        }
        Panache.getEntityManager().flush();
    }

    /**
     * Settles a device, with that name and place.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public Device arrive(Arrival arrival, String name, String place) {
        Device device = require(arrival.deviceId());
        Site site = Site.<Site>findByIdOptional(arrival.siteId())
                .filter(s -> s.customer.id.equals(device.site.customer.id))
                .orElseThrow(
                        () -> new InputRejected(Map.of("id", "a device moves between sites of one customer only")));
        InputCheck check = new InputCheck();
        check.text("name", name, 1, 120);
        check.text("place", place, 0, 200);
        check.that("host", HostNames.valid(arrival.host()), "neither an address nor a host name");
        check.done();
        String kept = name.strip();
        check.that(
                "name",
                !taken(device, site, "lower(name) = lower(?3)", kept),
                "this site has a device of this name already");
        check.that(
                "host",
                !taken(device, site, "host = ?3 and port = " + arrival.port(), arrival.host()),
                "this site has a device with this address and port already");
        check.done();
        device.site = site;
        device.name = kept;
        device.place = place.strip();
        device.host = arrival.host();
        device.port = arrival.port();
        if (device.credential.customer != null && !device.credential.customer.id.equals(site.customer.id)) {
            device.credential = Credential.findById(arrival.credentialId());
        }
        Panache.getEntityManager().flush();
        changed.fire(new FleetChanged());
        return device;
    }

    private static Device require(long id) {
        return Device.<Device>findByIdOptional(id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "this device is not there any more")));
    }

    private static boolean taken(Device device, Site site, String same, Object value) {
        return Device.count("site = ?1 and id <> ?2 and " + same, site, device.id, value) > 0;
    }
}
