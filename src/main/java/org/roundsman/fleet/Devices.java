package org.roundsman.fleet;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.shared.Page;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;

/** Reads and changes devices. What it returns has its site, customer, credential and model loaded. */
@ApplicationScoped
@Transactional
public class Devices {

    private static final String WHOLE = "from Device d join fetch d.site s join fetch s.customer c"
            + " join fetch d.credential left join fetch d.model";

    private final AuditTrail audit;
    private final Timeline timeline;
    private final Clock clock;
    private final Event<FleetChanged> changed;

    @Inject
    Devices(AuditTrail audit, Timeline timeline, Clock clock, Event<FleetChanged> changed) {
        this.audit = audit;
        this.timeline = timeline;
        this.clock = clock;
        this.changed = changed;
    }

    /** Every device of one site in the scope, by kind and name. */
    public List<Device> ofSite(CustomerScope scope, long siteId) {
        return Device.list(
                WHOLE + " where s.id = :site and (:only is null or c.id = :only) order by d.kind, lower(d.name)",
                Parameters.with("site", siteId).and("only", scope.onlyCustomer()));
    }

    /** The ids of all devices of these sites, as far as they lie in the scope. */
    public List<Long> idsAt(CustomerScope scope, Collection<Long> siteIds) {
        return siteIds.isEmpty()
                ? List.of()
                : Device.getEntityManager()
                        .createQuery(
                                "select d.id from Device d where d.site.id in :sites"
                                        + " and (:only is null or d.site.customer.id = :only)",
                                Long.class)
                        .setParameter("sites", siteIds)
                        .setParameter("only", scope.onlyCustomer())
                        .getResultList();
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Device> find(CustomerScope scope, long id) {
        return Device.<Device>find(WHOLE + " where d.id = ?1", id)
                .firstResultOptional()
                .filter(d -> scope.includes(d.site.customer.id));
    }

    /** Devices in the scope that use these credentials, by customer, site and name. */
    public Page<Device> using(CustomerScope scope, long credentialId, int page, int size) {
        Parameters whose = Parameters.with("keys", credentialId).and("only", scope.onlyCustomer());
        String where = " where d.credential.id = :keys and (:only is null or d.site.customer.id = :only)";
        long total = Device.count("from Device d" + where, whose);
        List<Device> found = Device.<Device>find(
                        WHOLE + where + " order by lower(c.name), lower(s.name), lower(d.name)", whose)
                .page(page - 1, size)
                .list();
        return new Page<>(found, page, size, total);
    }

    /** Every device, paused or not: any of them may send notifications. */
    public List<Device> all() {
        return Device.list(WHOLE + " order by d.id");
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
        audit.added(FleetFields.subject(device), FleetFields.of(device));
        changed.fire(new FleetChanged());
        return device;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Device change(long id, DeviceDraft draft) {
        Device device = require(id);
        FieldSet before = FleetFields.of(device);
        Credential former = device.credential;
        fill(device, draft);
        note(device, before, former);
        return device;
    }

    /**
     * Lets other credentials be used for the device from now on.
     *
     * @throws InputRejected when either is not there any more, or the credentials are not usable at its site
     */
    public Device useCredential(long id, long credentialId) {
        Device device = require(id);
        FieldSet before = FleetFields.of(device);
        Credential former = device.credential;
        InputCheck check = new InputCheck();
        device.credential = usable(check, device.site, credentialId);
        check.done();
        note(device, before, former);
        return device;
    }

    private void note(Device device, FieldSet before, Credential former) {
        audit.changed(FleetFields.subject(device), before, FleetFields.of(device));
        if (former != device.credential) {
            timeline.add(List.of(DeviceEvent.change(
                    device.id,
                    clock.instant(),
                    EventKind.CREDENTIALS_CHANGED,
                    "Other credentials are used",
                    former.name,
                    device.credential.name)));
        }
        changed.fire(new FleetChanged());
    }

    /**
     * Takes a device out of the fleet for good: nobody can ask for its past any more, and the next hourly clean-up deletes
     * its spans and day figures. Raw readings and quarter hours go with their partitions.
     */
    public void remove(long id) {
        Device device = require(id);
        audit.did("removed", FleetFields.subject(device));
        device.delete();
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
        Credential credential = usable(check, device.site, draft.credentialId());
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

    private static Credential usable(InputCheck check, Site site, long credentialId) {
        Credential credential = Credential.findById(credentialId);
        boolean usable = credential != null && credential.usableAt(site.id, site.customer.id);
        check.that("credentialId", usable, "these credentials are not there any more, or belong elsewhere");
        return credential;
    }

    private static boolean taken(Device device, String same, Object value) {
        return Device.count("site = ?1 and (?2 is null or id <> ?2) and " + same, device.site, device.id, value) > 0;
    }
}
