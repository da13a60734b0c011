package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.audit.AuditTrail;

/** Each change of the fleet leaves exactly one entry that says exactly what changed. */
@QuarkusTest
class FleetAuditDbTest {

    private static final String SECRET = "kittiwake-hidden-word";

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    @Inject
    Networks networks;

    @Inject
    Models models;

    @Inject
    AuditTrail trail;

    @Inject
    AuditLog log;

    @Inject
    DataSource database;

    private Actor actor;
    private Customer customer;
    private Site site;

    @BeforeEach
    void aSite() {
        actor = new Actor("mara-" + UUID.randomUUID(), 12L, Actor.Via.API, "night import", "192.0.2.8");
        customer = customers.add(new CustomerDraft("Pebblegate " + UUID.randomUUID(), "invented"));
        site = sites.add(customer.id, site("Harbour", "Europe/Berlin"));
    }

    @Test
    void customersAndSites() {
        Customer added = as(() -> customers.add(new CustomerDraft("  Orrin " + customer.id, "books")));
        as(() -> customers.change(added.id, new CustomerDraft("Orrin " + customer.id, "")));
        as(() -> customers.change(added.id, new CustomerDraft("Orrin " + customer.id, "")));
        Site shop = as(() -> sites.add(added.id, site("Shop", "Europe/Berlin")));
        as(() -> sites.change(shop.id, site("Shop", "Europe/London")));
        assertThat(said())
                .containsExactly(
                        "added customer Orrin " + customer.id + " of " + added.id + ": name>Orrin " + customer.id
                                + ", note>books",
                        "changed customer Orrin " + customer.id + " of " + added.id + ": note books>",
                        "added site Shop of " + added.id + ": name>Shop, customer>Orrin " + customer.id
                                + ", time zone>Europe/Berlin, street>1 Quay, country>DE, uplink down, kbit/s>50000,"
                                + " availability target, %>99.5, service hours>1 Mon 08:00-18:00, contacts>Reception,"
                                + " front desk",
                        "changed site Shop of " + added.id + ": time zone Europe/Berlin>Europe/London");
    }

    @Test
    void devicesAndNetworks() {
        Credential keys = credentials.add(community("read"));
        Credential others = credentials.add(community("other"));
        Device device = as(() -> devices.add(site.id, device("ap-1", keys)));
        as(() -> devices.change(device.id, DeviceDraft.of(device).atPort(1161)));
        as(() -> devices.useCredential(device.id, others.id));
        as(() -> devices.useCredential(device.id, others.id));
        as(() -> {
            devices.remove(device.id);
            networks.setPurpose(site.id, "pier", "guest");
            networks.setPurpose(site.id, "pier", "staff");
            networks.setPurpose(site.id, "pier", "staff");
            return "";
        });
        String of = " of " + customer.id;
        assertThat(said())
                .containsExactly(
                        "added device ap-1" + of + ": name>ap-1, site>Harbour, kind>access point, address>192.0.2.1,"
                                + " port>161, credentials>read, place>mast, seconds between rounds>60, paused>yes",
                        "changed device ap-1" + of + ": port 161>1161",
                        "changed device ap-1" + of + ": credentials read>other",
                        "removed device ap-1" + of + ":",
                        "added network pier" + of + ": site>Harbour, purpose>guest",
                        "changed network pier" + of + ": purpose guest>staff");
    }

    @Test
    void credentialsWithoutTheirSecrets() throws SQLException {
        Credential keys = as(() -> credentials.add(community("read")));
        Credential second = as(() -> credentials.add(community("second")));
        as(() -> credentials.change(keys.id, CredentialDraft.community(customer.id, "read", 2, "")));
        as(() -> credentials.change(keys.id, CredentialDraft.community(customer.id, "read", 2, SECRET + "2")));
        as(() -> credentials.change(keys.id, user(SECRET + "3", SECRET + "4")));
        as(() -> credentials.change(keys.id, user("", SECRET + "5")));
        as(() -> credentials.moveUp(second.id));
        as(() -> credentials.moveUp(second.id));
        as(() -> {
            credentials.remove(second.id);
            return "";
        });
        String of = " of " + customer.id + ": ";
        String owner = "for the devices of>" + customer.name;
        assertThat(said())
                .containsExactly(
                        "added credentials read" + of + "name>read, " + owner + ", order>1, version>v2c, community>set",
                        "added credentials second" + of + "name>second, " + owner
                                + ", order>2, version>v2c, community>set",
                        "changed credentials read" + of + "community set>changed",
                        "changed credentials read" + of
                                + "version v2c>v3, user>rounds, security level>AUTH_PRIV, authentication>SHA256,"
                                + " privacy>AES128, community set>, authentication password>set, privacy password>set",
                        "changed credentials read" + of + "privacy password set>changed",
                        "changed credentials second" + of + "order 2>1",
                        "removed credentials second" + of.stripTrailing());
        assertThat(rowsWith(SECRET)).isZero();
        assertThat(rowsWith("kittiwake")).isZero();
    }

    @Test
    void aModelOnceAndNotAgain() {
        as(() -> models.ensure(model("Audited " + customer.id)));
        as(() -> models.ensure(model("Audited " + customer.id)));
        assertThat(said())
                .singleElement()
                .asString()
                .startsWith("added model Tamarack Radio Audited " + customer.id + " of null: maker>Tamarack Radio");
    }

    @Test
    void whatWasRefusedOrRolledBackIsNotNoted() {
        assertThat(catchThrowable(() -> as(() -> customers.change(customer.id, new CustomerDraft("", "")))))
                .isInstanceOf(InputRejected.class);
        assertThat(catchThrowable(() -> QuarkusTransaction.requiringNew().run(() -> {
                    as(() -> customers.change(customer.id, new CustomerDraft(customer.name, "never kept")));
                    throw new IllegalStateException("rolled back on purpose");
                })))
                .hasMessage("rolled back on purpose");
        assertThat(said()).isEmpty();
    }

    @Test
    void theActorIsNotedWhole() {
        as(() -> customers.change(customer.id, new CustomerDraft(customer.name, "new note")));
        assertThat(entries()).singleElement().extracting(AuditEntry::actor).isEqualTo(actor);
    }

    private <T> T as(Supplier<T> work) {
        return trail.as(actor, work);
    }

    private List<AuditEntry> entries() {
        AuditQuery query = new AuditQuery("", actor.name(), "", null, null, "", null, null);
        List<AuditEntry> entries = new ArrayList<>(log.find(query, Optional.empty(), 100));
        Collections.reverse(entries);
        return entries;
    }

    private List<String> said() {
        return entries().stream()
                .map(entry -> (entry.action() + " " + entry.subject().kind() + " "
                                + entry.subject().name() + " of "
                                + entry.subject().customerId() + ": "
                                + entry.changes().stream()
                                        .map(c ->
                                                c.field() + (c.old().isEmpty() ? "" : " " + c.old()) + ">" + c.fresh())
                                        .collect(Collectors.joining(", ")))
                        .stripTrailing())
                .toList();
    }

    /** Everything of the whole table, whoever wrote it. */
    private long rowsWith(String word) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select count(*) from audit_entry where audit_entry::text ilike '%" + word + "%'")) {
            rows.next();
            return rows.getLong(1);
        }
    }

    private CredentialDraft community(String name) {
        return CredentialDraft.community(customer.id, name, 2, SECRET);
    }

    private CredentialDraft user(String auth, String priv) {
        return new CredentialDraft(customer.id, "read", 3, "", "rounds", "AUTH_PRIV", "SHA256", auth, "AES128", priv);
    }

    private static DeviceDraft device(String name, Credential keys) {
        return new DeviceDraft(name, DeviceKind.ACCESS_POINT, "192.0.2.1", 161, keys.id, null, "mast", 60, true);
    }

    private static Model model(String name) {
        Model model = new Model();
        model.maker = "Tamarack Radio";
        model.name = name;
        model.kind = DeviceKind.ACCESS_POINT;
        return model;
    }

    private static SiteDraft site(String name, String zone) {
        return new SiteDraft(
                name,
                zone,
                "1 Quay",
                "",
                "",
                "DE",
                "",
                50_000,
                null,
                List.of(new ServiceHours(1, LocalTime.of(8, 0), LocalTime.of(18, 0))),
                List.of(new SiteContact("Reception", "front desk", "", "")));
    }
}
