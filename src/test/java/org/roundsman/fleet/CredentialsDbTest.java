package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.roundsman.fleet.CredentialWeakness.KNOWN_WORD;
import static org.roundsman.fleet.CredentialWeakness.NO_AUTHENTICATION;
import static org.roundsman.fleet.CredentialWeakness.NO_PRIVACY;
import static org.roundsman.fleet.CredentialWeakness.READABLE;
import static org.roundsman.fleet.CredentialWeakness.SHA1;
import static org.roundsman.fleet.CredentialWeakness.SHORT_SECRET;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;

/** Whose credentials are, in which order they are tried, and what is told about them; the rules are the project's own. */
@QuarkusTest
class CredentialsDbTest {

    private static final String LONG_SECRET = "quayside-and-lantern";

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    @Inject
    Timeline timeline;

    @Inject
    Sealer sealer;

    @Inject
    DataSource database;

    private Customer customer;
    private Site harbour;
    private Site inland;

    @BeforeEach
    void aCustomerWithTwoSites() {
        customer = customers.add(new CustomerDraft("Saltmarsh Ferry Line " + UUID.randomUUID(), "invented"));
        harbour = sites.add(customer.id, site("Harbour"));
        inland = sites.add(customer.id, site("Inland"));
    }

    @Test
    void theMostSpecificAreTriedFirstAndEachOwnersInTheirOrder() {
        String all = UUID.randomUUID().toString();
        Credential everybodys = credentials.add(draft(null, "everybody " + all));
        Credential customers1 = credentials.add(draft(customer.id, "customer, first"));
        Credential customers2 = credentials.add(draft(customer.id, "a customer, second"));
        Credential sites1 = credentials.add(draft(customer.id, "site").at(harbour.id));
        Credential elsewhere = credentials.add(draft(customer.id, "site").at(inland.id));
        assertThat(ids(credentials.usableAt(harbour.id)))
                .containsSubsequence(sites1.id, customers1.id, customers2.id, everybodys.id)
                .doesNotContain(elsewhere.id);
        credentials.moveUp(customers2.id);
        assertThat(ids(credentials.usableAt(harbour.id))).containsSubsequence(sites1.id, customers2.id, customers1.id);
        credentials.moveUp(customers2.id);
        credentials.moveDown(customers2.id);
        assertThat(ids(credentials.usableAt(harbour.id))).containsSubsequence(customers1.id, customers2.id);
        assertThat(ids(credentials.usableBy(customer.id))).contains(sites1.id, elsewhere.id, everybodys.id);
        assertThat(credentials.usableAt(Long.MAX_VALUE)).isEmpty();
    }

    @Test
    void aDeviceUsesOnlyWhatIsUsableAtItsSite() {
        Credential atHarbour = credentials.add(draft(customer.id, "harbour").at(harbour.id));
        Device device = devices.add(harbour.id, device("ap-1", atHarbour));
        assertThat(faults(() -> devices.add(inland.id, device("ap-2", atHarbour))))
                .containsOnlyKeys("credentialId");
        Customer other = customers.add(new CustomerDraft("Thistledown " + UUID.randomUUID(), "invented"));
        Credential theirs = credentials.add(draft(other.id, "theirs"));
        assertThat(faults(() -> devices.useCredential(device.id, theirs.id))).containsOnlyKeys("credentialId");
        Credential inlands = credentials.add(draft(customer.id, "inland").at(inland.id));
        assertThat(faults(() -> devices.useCredential(device.id, inlands.id))).containsOnlyKeys("credentialId");
    }

    @Test
    void credentialsCannotBeTakenAwayFromTheDevicesThatUseThem() {
        Credential shared = credentials.add(draft(customer.id, "shared"));
        devices.add(harbour.id, device("ap-1", shared));
        devices.add(inland.id, device("ap-1", shared));
        assertThat(faults(() -> credentials.change(
                        shared.id, draft(customer.id, "shared").at(harbour.id))))
                .containsOnlyKeys("siteId");
        Customer other = customers.add(new CustomerDraft("Thistledown " + UUID.randomUUID(), "invented"));
        assertThat(faults(() -> credentials.change(shared.id, draft(other.id, "shared"))))
                .hasEntrySatisfying("customerId", fault -> assertThat(fault).startsWith("2 devices"));
        assertThat(credentials.change(shared.id, draft(null, "shared " + customer.id)).customer)
                .isNull();
        Site elsewhere = sites.add(other.id, site("Mill"));
        assertThat(faults(() -> credentials.add(draft(customer.id, "wrong").at(elsewhere.id))))
                .containsOnlyKeys("siteId");
    }

    @Test
    void onlyCredentialsThatNobodyUsesAreRemoved() {
        Credential used = credentials.add(draft(customer.id, "used"));
        Device device = devices.add(harbour.id, device("ap-1", used));
        assertThat(credentials.usage()).containsEntry(used.id, 1L);
        assertThat(devices.using(CustomerScope.everyone(), used.id, 1, 10).items())
                .extracting(d -> d.id)
                .containsExactly(device.id);
        assertThat(devices.using(CustomerScope.of(customer.id + 1_000_000), used.id, 1, 10)
                        .total())
                .isZero();
        assertThat(faults(() -> credentials.remove(used.id)).get("")).startsWith("1 device uses");
        devices.remove(device.id);
        credentials.remove(used.id);
        assertThat(credentials.find(used.id)).isEmpty();
        assertThat(faults(() -> credentials.remove(used.id))).containsOnlyKeys("id");
    }

    @Test
    void takingOtherCredentialsStandsOnTheTimeline() {
        Credential before = credentials.add(draft(customer.id, "former"));
        Credential after = credentials.add(draft(customer.id, "latter"));
        Device device = devices.add(harbour.id, device("ap-1", before));
        devices.useCredential(device.id, after.id);
        assertThat(timeline.latest(device.id, 5)).singleElement().satisfies(event -> {
            assertThat(event.kind()).isEqualTo(EventKind.CREDENTIALS_CHANGED);
            assertThat(event.old()).isEqualTo("former");
            assertThat(event.fresh()).isEqualTo("latter");
        });
    }

    /** Known words are common practice, no source; v1 and v2c, and levels: RFC 3410 to 3414 and 7860 (from memory). */
    @ParameterizedTest
    @CsvSource({"public, true", "Private, true", "PUBLIC, true", "publicity-of-the-pier, false"})
    void aWellKnownCommunityIsWarnedAbout(String community, boolean known) {
        Credential added = credentials.add(
                CredentialDraft.community(customer.id, "read " + community + UUID.randomUUID(), 2, community));
        assertThat(added.weaknesses().contains(KNOWN_WORD)).isEqualTo(known);
        assertThat(added.weaknesses()).contains(READABLE);
        assertThat(added.weaknesses().contains(SHORT_SECRET)).isEqualTo(community.length() < 12);
    }

    @Test
    void whatIsWeakAboutUsersOfVersion3IsNamed() {
        assertThat(user("NO_AUTH", "", "").weaknesses()).containsExactly(NO_AUTHENTICATION);
        assertThat(user("AUTH", "SHA256", "").weaknesses()).containsExactly(NO_PRIVACY);
        assertThat(user("AUTH_PRIV", "SHA1", "AES128").weaknesses()).containsExactly(SHA1);
        Credential strong = user("AUTH_PRIV", "SHA256", "AES128");
        assertThat(strong.weaknesses()).isEmpty();
        Credential weakened = credentials.change(
                strong.id,
                new CredentialDraft(
                        customer.id, strong.name, 3, "", "rounds", "AUTH_PRIV", "SHA256", "Password1", "AES128", ""));
        assertThat(weakened.weaknesses()).containsExactly(KNOWN_WORD, SHORT_SECRET);
    }

    @Test
    void theSummaryCountsTheDevicesBehindEachWeakness() {
        CredentialSummary before = credentials.summary();
        Credential weak = credentials.add(CredentialDraft.community(customer.id, "weak", 2, "public"));
        Credential strong = user("AUTH_PRIV", "SHA256", "AES128");
        devices.add(harbour.id, device("ap-1", weak));
        devices.add(inland.id, device("ap-1", weak));
        devices.add(inland.id, device("ap-2", strong));
        CredentialSummary after = credentials.summary();
        assertThat(after.devices() - before.devices()).isEqualTo(3);
        assertThat(after.weak() - before.weak()).isEqualTo(2);
        assertThat(devicesWith(after, KNOWN_WORD) - devicesWith(before, KNOWN_WORD))
                .isEqualTo(2);
        assertThat(after.risks().get(0).weakness()).isEqualTo(KNOWN_WORD);
    }

    private static long devicesWith(CredentialSummary summary, CredentialWeakness weakness) {
        return summary.risks().stream()
                .filter(risk -> risk.weakness() == weakness)
                .mapToLong(CredentialSummary.Risk::devices)
                .sum();
    }

    /** Decision 5: what is sealed is bound to its place. */
    @Test
    void aSecretCopiedToAnotherRowDoesNotOpen() throws SQLException {
        Credential one = credentials.add(draft(customer.id, "one"));
        Credential two = credentials.add(draft(customer.id, "two"));
        set(two.id, sealed(one.id));
        assertThat(catchThrowableOfType(SealException.class, () -> opened(two.id)))
                .hasMessageContaining("another place");
    }

    /** As the first version of the program sealed it: bound to its field alone, and not judged. */
    @Test
    void whatAnEarlierVersionSealedOpensAndIsBoundToItsRowAtTheNextStart() throws SQLException {
        Credential one = credentials.add(draft(customer.id, "one"));
        Credential two = credentials.add(draft(customer.id, "two"));
        byte[] former = sealer.seal(
                "public".getBytes(StandardCharsets.UTF_8), "credential community".getBytes(StandardCharsets.UTF_8));
        set(one.id, former);
        assertThat(opened(one.id)).isEqualTo("public");
        credentials.lookAfter();
        assertThat(opened(one.id)).isEqualTo("public");
        assertThat(credentials.find(one.id).orElseThrow().weaknesses()).contains(KNOWN_WORD);
        set(two.id, sealed(one.id));
        assertThat(catchThrowableOfType(SealException.class, () -> opened(two.id)))
                .isNotNull();
        credentials.change(two.id, draft(customer.id, "two"));
    }

    private String opened(long id) {
        return credentials.secrets(credentials.find(id).orElseThrow()).community();
    }

    private byte[] sealed(long id) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement query =
                        connection.prepareStatement("select community from credential where id = " + id);
                ResultSet row = query.executeQuery()) {
            assertThat(row.next()).isTrue();
            return row.getBytes(1);
        }
    }

    private void set(long id, byte[] sealed) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement change =
                        connection.prepareStatement("update credential set community = ? where id = " + id)) {
            change.setBytes(1, sealed);
            assertThat(change.executeUpdate()).isEqualTo(1);
        }
    }

    private Credential user(String level, String auth, String priv) {
        return credentials.add(new CredentialDraft(
                customer.id,
                "user " + UUID.randomUUID(),
                3,
                "",
                "rounds",
                level,
                auth,
                auth.isEmpty() ? "" : LONG_SECRET,
                priv,
                priv.isEmpty() ? "" : LONG_SECRET));
    }

    private static CredentialDraft draft(Long customer, String name) {
        return CredentialDraft.community(customer, name, 2, LONG_SECRET);
    }

    private static DeviceDraft device(String name, Credential credential) {
        String host = "192.0.2." + (1 + Math.abs(name.hashCode() % 200));
        return new DeviceDraft(name, DeviceKind.ACCESS_POINT, host, 161, credential.id, null, "", 60, true);
    }

    private static SiteDraft site(String name) {
        return new SiteDraft(name, "Europe/Berlin", "", "", "", "DE", "", null, null, List.of(), List.of());
    }

    private static List<Long> ids(List<Credential> credentials) {
        return credentials.stream().map(c -> c.id).toList();
    }

    private static Map<String, String> faults(ThrowingCallable entry) {
        InputRejected rejected = catchThrowableOfType(InputRejected.class, entry);
        assertThat(rejected).as("the entry was taken").isNotNull();
        return rejected.faults();
    }
}
