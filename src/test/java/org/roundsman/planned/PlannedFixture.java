package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;

/** An invented customer with a site in Berlin, which has two access points, and one in New York. */
@ApplicationScoped
class PlannedFixture {

    private final Customers customers;
    private final Sites sites;
    private final Devices devices;
    private final Credentials credentials;

    PlannedFixture(Customers customers, Sites sites, Devices devices, Credentials credentials) {
        this.customers = customers;
        this.sites = sites;
        this.devices = devices;
        this.credentials = credentials;
    }

    record Place(String name, long customer, long pier, long island, long device, long other) {}

    Place place() {
        String name = "Saltmarsh " + UUID.randomUUID();
        long customer = customers.add(new CustomerDraft(name, "")).id;
        long pier = site(customer, "Pier", "Europe/Berlin");
        long island = site(customer, "Island", "America/New_York");
        long keys = credentials.add(CredentialDraft.community(customer, "keys", 2, "quayside-secret")).id;
        return new Place(name, customer, pier, island, device(pier, keys, "ap-mast"), device(pier, keys, "ap-hut"));
    }

    void removeDevice(long id) {
        devices.remove(id);
    }

    private long site(long customer, String name, String zone) {
        return sites.add(customer, new SiteDraft(name, zone, "", "", "", "", "", null, null, List.of(), List.of())).id;
    }

    private long device(long site, long keys, String name) {
        DeviceDraft draft =
                new DeviceDraft(name, DeviceKind.ACCESS_POINT, name + ".example", 161, keys, null, "", 60, false);
        return devices.add(site, draft).id;
    }
}
