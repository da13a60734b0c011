package org.roundsman.fleet;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads and changes devices. What it returns has its site, customer, credential and model loaded. */
@ApplicationScoped
@Transactional
public class Devices {

    private static final String WHOLE = "from Device d join fetch d.site s join fetch s.customer c"
            + " join fetch d.credential left join fetch d.model";

    private final Event<FleetChanged> changed;

    @Inject
    Devices(Event<FleetChanged> changed) {
        this.changed = changed;
    }

    /** Every device of one site in the scope, by kind and name. */
    public List<Device> ofSite(CustomerScope scope, long siteId) {
        return Device.list(
                WHOLE + " where s.id = :site and (:only is null or c.id = :only) order by d.kind, lower(d.name)",
                Parameters.with("site", siteId).and("only", scope.onlyCustomer()));
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Device> find(CustomerScope scope, long id) {
        return Device.<Device>find(WHOLE + " where d.id = ?1", id)
                .firstResultOptional()
                .filter(d -> scope.includes(d.site.customer.id));
    }

    /** Every device that is not paused, for the poller. */
    public List<Device> watched() {
        return Device.list(WHOLE + " where d.paused = false order by d.id");
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Device add(long siteId, DeviceDraft draft) {
        Device device = new Device();
        device.site = Site.<Site>findByIdOptional(siteId)
                .orElseThrow(() -> new InputRejected(Map.of("siteId", "this site is not there any more")));
        fill(device, draft);
        device.persist();
        changed.fire(new FleetChanged());
        return device;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Device change(long id, DeviceDraft draft) {
        Device device = require(id);
        fill(device, draft);
        changed.fire(new FleetChanged());
        return device;
    }

    /**
     * Takes a device out of the fleet for good: nobody can ask for its past any more, and the next hourly clean-up deletes
     * its spans and day figures. Raw readings and quarter hours go with their partitions.
     */
    public void remove(long id) {
        require(id).delete();
        changed.fire(new FleetChanged());
    }

    private static Device require(long id) {
        return Device.<Device>findByIdOptional(id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "this device is not there any more")));
    }

    private static void fill(Device device, DeviceDraft draft) {
        InputCheck check = new InputCheck();
        draft.check(check);
        check.done();
        String name = draft.name().strip();
        check.that(
                "name", !taken(device, "lower(name) = lower(?3)", name), "this site has a device of this name already");
        check.that(
                "host",
                !taken(device, "host = ?3 and port = " + draft.port(), draft.host()),
                "this site has a device with this address and port already");
        Credential credential = Credential.findById(draft.credentialId());
        boolean usable = credential != null
                && (credential.customer == null || credential.customer.id.equals(device.site.customer.id));
        check.that("credentialId", usable, "these credentials are not there any more, or belong to another customer");
        Model model = draft.modelId() == null ? null : Model.findById(draft.modelId());
        check.that("modelId", draft.modelId() == null || model != null, "this model is not there any more");
        check.done();
        device.name = name;
        device.kind = draft.kind();
        device.host = draft.host();
        device.port = draft.port();
        device.credential = credential;
        device.model = model;
        device.place = draft.place().strip();
        device.intervalSeconds = draft.intervalSeconds();
        device.paused = draft.paused();
    }

    private static boolean taken(Device device, String same, Object value) {
        return Device.count("site = ?1 and (?2 is null or id <> ?2) and " + same, device.site, device.id, value) > 0;
    }
}
