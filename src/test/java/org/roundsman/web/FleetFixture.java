package org.roundsman.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Accounts;
import org.roundsman.people.NewPerson;
import org.roundsman.people.Role;

/** Invented customers, sites, devices and people for tests of pages, made as people make them. */
@ApplicationScoped
public class FleetFixture {

    public static final String PASSWORD = "heron-lantern-42";

    /** Where the access point of a place is polled. */
    public static final String HOST = "127.99.0.1";

    public static final int PORT = 16_099;

    private static final AtomicInteger NUMBER = new AtomicInteger();

    private final Customers customers;
    private final Sites sites;
    private final Devices devices;
    private final Credentials credentials;
    private final Accounts accounts;

    FleetFixture(Customers customers, Sites sites, Devices devices, Credentials credentials, Accounts accounts) {
        this.customers = customers;
        this.sites = sites;
        this.devices = devices;
        this.credentials = credentials;
        this.accounts = accounts;
    }

    /** A customer with one site, credentials and one access point. */
    public record Place(String customer, long customerId, long siteId, long credentialId, long deviceId) {}

    public Place place(String name) {
        String unique = name + " " + word();
        long customer = customers.add(new CustomerDraft(unique, "Invented")).id;
        long site = sites.add(customer, site("Pier of " + unique)).id;
        long credential =
                credentials.add(CredentialDraft.community(customer, "pier keys " + unique, 2, "quayside-secret")).id;
        return new Place(
                unique, customer, site, credential, device(site, credential, "Pier AP of " + unique, HOST, PORT));
    }

    /** A word that no other name holds, so that a search finds one place only. */
    private static String word() {
        return new Random()
                .ints(8, 'a', 'z' + 1)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static SiteDraft site(String name) {
        return new SiteDraft(
                name, "Europe/Berlin", "1 Quay", "12345", "Saltmarsh", "DE", "", 50_000, 10_000, List.of(), List.of());
    }

    public long device(long site, long credential, String name, String host, int port) {
        DeviceDraft draft =
                new DeviceDraft(name, DeviceKind.ACCESS_POINT, host, port, credential, null, "mast", 60, false);
        return devices.add(site, draft).id;
    }

    public Credentials credentials() {
        return credentials;
    }

    /** Somebody in that role, signed in. */
    public Browser browser(Role role, Long customer) {
        return Browser.of(person(role, customer), PASSWORD);
    }

    /** Somebody's sign-in name; the password is {@link #PASSWORD}. */
    public String person(Role role, Long customer) {
        String name = "person-" + NUMBER.incrementAndGet() + "-" + System.nanoTime() % 100_000;
        accounts.ensure(new NewPerson(name, "", role, Optional.ofNullable(customer)), PASSWORD, false);
        return name;
    }
}
