package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class FleetDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    @Inject
    AgroalDataSource database;

    private Customer customer;
    private Site site;
    private Credential credential;

    @BeforeEach
    void aCustomerWithOneSite() {
        customer = customers.add(new CustomerDraft("Pebblegate Dental " + UUID.randomUUID(), "invented"));
        site = sites.add(customer.id, siteDraft("Harbour clinic", "Europe/Berlin"));
        credential = credentials.add(CredentialDraft.community(customer.id, "read", 2, "pebbles-read"));
    }

    @Test
    void aSiteComesBackAsItWasEntered() {
        Site found = sites.find(ALL, site.id).orElseThrow();
        assertThat(found.customer.name).isEqualTo(customer.name);
        assertThat(found.zone().getId()).isEqualTo("Europe/Berlin");
        assertThat(found.hours).containsExactly(new ServiceHours(1, LocalTime.of(8, 0), LocalTime.of(18, 0)));
        assertThat(found.contacts)
                .containsExactly(new SiteContact("Reception", "front desk", "+1-555-0142", "desk@pebblegate.example"));
        assertThat(found.uplinkDownKbit).isEqualTo(50_000);
    }

    @Test
    void aSiteIsChangedAndNotDoubled() {
        sites.change(site.id, siteDraft("Harbour clinic", "Europe/London"));
        assertThat(sites.all(ALL, customer.id)).hasSize(1).allSatisfy(s -> assertThat(s.timeZone)
                .isEqualTo("Europe/London"));
        assertThat(faults(() -> sites.add(customer.id, siteDraft("HARBOUR clinic", "Europe/Berlin"))))
                .containsKey("name");
    }

    @Test
    void aSiteOfAnotherCustomerIsOutOfScope() {
        CustomerScope other = CustomerScope.of(customer.id + 1_000_000);
        assertThat(sites.find(other, site.id)).isEmpty();
        assertThat(sites.all(other, null)).isEmpty();
        assertThat(customers.find(other, customer.id)).isEmpty();
        assertThat(customers.all(other)).isEmpty();
        Device device = devices.add(site.id, deviceDraft("ap-1", "192.0.2.1"));
        assertThat(devices.find(other, device.id)).isEmpty();
        assertThat(devices.ofSite(other, site.id)).isEmpty();
        assertThat(devices.find(CustomerScope.of(customer.id), device.id)).isPresent();
    }

    @Test
    void everyFaultOfAnEntryIsNamedAtOnce() {
        DeviceDraft wrong = new DeviceDraft(" ", DeviceKind.ACCESS_POINT, "192.0.2.300", 0, null, null, "", 5, false);
        assertThat(faults(() -> devices.add(site.id, wrong)))
                .containsOnlyKeys("name", "host", "port", "credentialId", "intervalSeconds");
        assertThat(faults(() -> sites.add(customer.id, siteDraft("Second", "Europe/Atlantis"))))
                .containsOnlyKeys("timeZone");
        assertThat(faults(() -> customers.add(new CustomerDraft("", "")))).containsOnlyKeys("name");
    }

    @Test
    void portsBeyondSixteenBitsAreRefused() {
        assertThat(faults(() -> devices.add(site.id, withPort(65536)))).containsOnlyKeys("port");
        assertThat(devices.add(site.id, withPort(65535)).port).isEqualTo(65535);
    }

    @Test
    void oneAddressAndPortStandsOnceAtASite() {
        devices.add(site.id, deviceDraft("ap-1", "192.0.2.1"));
        assertThat(faults(() -> devices.add(site.id, deviceDraft("ap-2", "192.0.2.1"))))
                .containsOnlyKeys("host");
        assertThat(faults(() -> devices.add(site.id, deviceDraft("AP-1", "192.0.2.2"))))
                .containsOnlyKeys("name");
    }

    @Test
    void secretsAreSealedInTheDatabaseAndOpenForThePoller() throws Exception {
        Credential v3 = credentials.add(v3("longenough1", "longenough2"));
        CredentialSecrets opened = credentials.secrets(credentials.find(v3.id).orElseThrow());
        assertThat(opened.authPassword()).isEqualTo("longenough1");
        assertThat(opened.privPassword()).isEqualTo("longenough2");
        assertThat(opened.toString()).doesNotContain("longenough");
        try (var connection = database.getConnection();
                var query = connection.prepareStatement("select auth_secret from credential where id = ?")) {
            query.setLong(1, v3.id);
            var rows = query.executeQuery();
            assertThat(rows.next()).isTrue();
            assertThat(new String(rows.getBytes(1), StandardCharsets.ISO_8859_1))
                    .doesNotContain("longenough1");
        }
    }

    @Test
    void aChangeWithoutANewSecretKeepsTheOldOne() {
        Credential v3 = credentials.add(v3("longenough1", "longenough2"));
        credentials.change(v3.id, v3("", "otherthan2!"));
        CredentialSecrets opened = credentials.secrets(credentials.find(v3.id).orElseThrow());
        assertThat(opened.authPassword()).isEqualTo("longenough1");
        assertThat(opened.privPassword()).isEqualTo("otherthan2!");
    }

    /** RFC 3414 section 11.2: passwords of at least eight characters (from memory). */
    @Test
    void shortPasswordsOfTheUserBasedModelAreRefused() {
        assertThat(faults(() -> credentials.add(v3("short12", "longenough2")))).containsOnlyKeys("authPassword");
    }

    @Test
    void anotherCustomersCredentialsCannotBeUsed() {
        Customer other = customers.add(new CustomerDraft("Orrin & Vale Booksellers " + UUID.randomUUID(), "invented"));
        Credential theirs = credentials.add(CredentialDraft.community(other.id, "read", 2, "books-read"));
        DeviceDraft draft =
                new DeviceDraft("ap-9", DeviceKind.ACCESS_POINT, "192.0.2.9", 161, theirs.id, null, "", 60, false);
        assertThat(faults(() -> devices.add(site.id, draft))).containsOnlyKeys("credentialId");
    }

    @Test
    void aPausedDeviceIsNotWatched() {
        Device device = devices.add(site.id, deviceDraft("ap-1", "192.0.2.1"));
        assertThat(devices.watched()).anyMatch(d -> d.id.equals(device.id));
        DeviceDraft paused =
                new DeviceDraft("ap-1", DeviceKind.ACCESS_POINT, "192.0.2.1", 161, credential.id, null, "", 60, true);
        devices.change(device.id, paused);
        assertThat(devices.watched()).noneMatch(d -> d.id.equals(device.id));
    }

    private static Map<String, String> faults(ThrowingCallable entry) {
        InputRejected rejected = catchThrowableOfType(InputRejected.class, entry);
        assertThat(rejected).as("the entry was taken").isNotNull();
        return rejected.faults();
    }

    private CredentialDraft v3(String auth, String priv) {
        return new CredentialDraft(
                customer.id, "v3 of " + customer.id, 3, "", "rounds", "AUTH_PRIV", "SHA256", auth, "AES128", priv);
    }

    private DeviceDraft deviceDraft(String name, String host) {
        return new DeviceDraft(name, DeviceKind.ACCESS_POINT, host, 161, credential.id, null, "hall", 60, false);
    }

    private DeviceDraft withPort(int port) {
        return new DeviceDraft(
                "ap-port", DeviceKind.ACCESS_POINT, "192.0.2.77", port, credential.id, null, "", 60, false);
    }

    private static SiteDraft siteDraft(String name, String zone) {
        return new SiteDraft(
                name,
                zone,
                "1 Quay Lane",
                "00000",
                "Pebblegate",
                "DE",
                "Ask at the desk",
                50_000,
                10_000,
                List.of(new ServiceHours(1, LocalTime.of(8, 0), LocalTime.of(18, 0))),
                List.of(new SiteContact("Reception", "front desk", "+1-555-0142", "desk@pebblegate.example")));
    }
}
