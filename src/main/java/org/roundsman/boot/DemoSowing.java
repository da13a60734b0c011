package org.roundsman.boot;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoCustomer;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.FleetSeed;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;

/**
 * Puts the invented fleet among what people edit. A site that is there already is left as people have made it: nothing is
 * added to it again.
 */
@ApplicationScoped
class DemoSowing implements FleetSeed {

    private static final CustomerScope ALL = CustomerScope.everyone();

    private final Customers customers;
    private final Credentials credentials;
    private final FleetServices fleet;
    private final Event<DemoSown> sown;

    @Inject
    DemoSowing(Customers customers, Credentials credentials, FleetServices fleet, Event<DemoSown> sown) {
        this.customers = customers;
        this.credentials = credentials;
        this.fleet = fleet;
        this.sown = sown;
    }

    @Override
    public Map<Integer, Long> sow(DemoFleet invented) {
        Map<DemoModel, Long> models = QuarkusTransaction.requiringNew().call(this::models);
        Map<String, Customer> known = new HashMap<>();
        customers.all(ALL).forEach(customer -> known.put(customer.name.toLowerCase(Locale.ROOT), customer));
        Map<Integer, Long> ids = new HashMap<>();
        for (DemoCustomer customer : invented.customers()) {
            Customer stored = known.get(customer.name().toLowerCase(Locale.ROOT));
            if (stored == null) {
                stored = customers.add(new CustomerDraft(customer.name(), customer.note()));
            }
            Map<String, Long> keys = credentials(stored, customer);
            Map<String, Site> sites = new HashMap<>();
            fleet.sites().all(ALL, stored.id).forEach(site -> sites.put(site.name.toLowerCase(Locale.ROOT), site));
            for (DemoSite site : customer.sites()) {
                Customer owner = stored;
                Site there = sites.get(site.name().toLowerCase(Locale.ROOT));
                // One transaction a site: what is there of a site is all of it.
                ids.putAll(QuarkusTransaction.requiringNew()
                        .call(() -> there == null ? fresh(owner, site, keys, models) : known(there, site)));
            }
        }
        sown.fire(new DemoSown(invented, ids, firstSown()));
        return ids;
    }

    /** When the first invented customer was sown: the invented past ends there, also at a later start. */
    Instant firstSown() {
        return customers.all(ALL).stream()
                .filter(customer -> customer.note.equals(DemoFleet.NOTE))
                .map(customer -> customer.createdAt)
                .min(Comparator.naturalOrder())
                .orElseThrow(() -> new IllegalStateException("the invented fleet has not been sown"));
    }

    private Map<DemoModel, Long> models() {
        Map<DemoModel, Long> ids = new HashMap<>();
        for (DemoModel invented : DemoModel.catalogue()) {
            Model model = new Model();
            model.maker = invented.maker();
            model.name = invented.label();
            model.kind = invented.kind();
            model.objectId = invented.objectId();
            model.radios = (short) invented.bands().size();
            model.streams = invented.streams() == 0 ? null : (short) invented.streams();
            model.bands = invented.bandList();
            model.antenna = invented.antenna();
            model.outdoor = invented.outdoor();
            model.poeClass =
                    invented.poeClass() == null ? null : invented.poeClass().shortValue();
            ids.put(invented, fleet.models().ensure(model).id);
        }
        return ids;
    }

    private Map<String, Long> credentials(Customer customer, DemoCustomer invented) {
        Map<String, Long> ids = new HashMap<>();
        credentials.usableBy(customer.id).stream()
                .filter(credential -> credential.site == null)
                .forEach(credential -> ids.putIfAbsent(credential.name, credential.id));
        for (DemoCredential credential : invented.credentials()) {
            ids.computeIfAbsent(credential.name(), name -> credentials.add(draft(customer.id, credential)).id);
        }
        return ids;
    }

    private static CredentialDraft draft(long customerId, DemoCredential credential) {
        if (credential instanceof DemoCredential.Community community) {
            return CredentialDraft.community(customerId, community.name(), community.version(), community.community());
        }
        DemoCredential.User user = (DemoCredential.User) credential;
        return new CredentialDraft(
                customerId,
                user.name(),
                3,
                "",
                user.userName(),
                "AUTH_PRIV",
                "SHA256",
                user.authPassword(),
                "AES128",
                user.privPassword());
    }

    private Map<Integer, Long> fresh(
            Customer customer, DemoSite invented, Map<String, Long> keys, Map<DemoModel, Long> models) {
        Map<Integer, Long> ids = new HashMap<>();
        Site site = fleet.sites().add(customer.id, draft(invented));
        invented.networks().forEach(n -> fleet.networks().setPurpose(site.id, n.ssid(), n.purpose()));
        for (DemoDevice device : invented.devices()) {
            Device stored = fleet.devices().add(site.id, draft(device, keys, models));
            ids.put(device.number(), stored.id);
        }
        return ids;
    }

    /** Only the port follows: the agents may have been started on another one this time. */
    private Map<Integer, Long> known(Site site, DemoSite invented) {
        Map<String, Device> byHost = new HashMap<>();
        fleet.devices().ofSite(ALL, site.id).forEach(device -> byHost.put(device.host, device));
        Map<Integer, Long> ids = new HashMap<>();
        for (DemoDevice device : invented.devices()) {
            Device stored = byHost.get(device.host());
            if (stored != null) {
                ids.put(device.number(), stored.id);
                if (stored.port != device.port()) {
                    fleet.devices().change(stored.id, DeviceDraft.of(stored).atPort(device.port()));
                }
            }
        }
        return ids;
    }

    private static SiteDraft draft(DemoSite site) {
        List<ServiceHours> hours = site.hours().stream()
                .map(h -> new ServiceHours(h.weekday().getValue(), h.opens(), h.closes()))
                .toList();
        List<SiteContact> contacts = site.contacts().stream()
                .map(c -> new SiteContact(c.name(), c.duty(), c.phone(), c.email()))
                .toList();
        return new SiteDraft(
                site.name(),
                site.zone().getId(),
                site.street(),
                site.postcode(),
                site.town(),
                site.country(),
                site.accessNote(),
                site.uplinkDownKbit(),
                site.uplinkUpKbit(),
                hours,
                contacts);
    }

    private static DeviceDraft draft(DemoDevice device, Map<String, Long> keys, Map<DemoModel, Long> models) {
        return new DeviceDraft(
                device.name(),
                device.kind(),
                device.host(),
                device.port(),
                keys.get(device.credential().name()),
                models.get(device.model()),
                device.place(),
                60,
                false);
    }
}
