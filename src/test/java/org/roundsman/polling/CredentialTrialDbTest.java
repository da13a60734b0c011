package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;
import org.roundsman.snmp.Snmpd;

/** Tries credentials at Debian's snmpd, whose users and community are its own. */
@QuarkusTest
class CredentialTrialDbTest {

    @TempDir
    Path folder;

    @Inject
    CredentialTrial trial;

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

    @BeforeEach
    void aSite() {
        customer = customers.add(new CustomerDraft("Quillfeather School " + UUID.randomUUID(), "invented"));
        site = sites.add(
                customer.id,
                new SiteDraft("Main", "Europe/Berlin", "", "", "", "DE", "", null, null, List.of(), List.of()));
    }

    @Test
    void theFirstThatLetsUsInIsNamedAndWhatEachAnsweredIsSaid() throws Exception {
        try (Snmpd snmpd = new Snmpd(folder).start()) {
            Credential wrong = credentials.add(community("used now", "not-the-lantern"));
            long device = device(wrong, Snmpd.HOST, snmpd.port());
            credentials.add(community("wrong community", "lighthouse").at(site.id));
            credentials.add(user("unknown user", "nobody", "authentication", "confidential")
                    .at(site.id));
            credentials.add(user("wrong password", "walker", "authentication-wrong", "confidential")
                    .at(site.id));
            Credential right = credentials.add(user("right", "walker", "authentication", "confidential"));
            credentials.add(community("not reached", Snmpd.COMMUNITY));
            CredentialTrial.Result result = result(device, 0);
            assertThat(result.tried())
                    .extracting(CredentialTrial.Tried::name)
                    .containsExactly("wrong community", "unknown user", "wrong password", "right");
            assertThat(result.tried())
                    .extracting(CredentialTrial.Tried::letIn)
                    .containsExactly(false, false, false, true);
            // Report PDUs of RFC 3414 tell users and passwords apart; with v2c a wrong community is silence
            assertThat(result.tried().get(0).answer()).startsWith("no reply");
            assertThat(result.tried().get(1).answer()).contains("does not know this SNMP user");
            assertThat(result.tried().get(2).answer()).contains("wrong authentication password");
            assertThat(result.letIn())
                    .hasValueSatisfying(one -> assertThat(one.credentialId()).isEqualTo(right.id));
            assertThat(result.left()).isPositive();
            assertThat(result(device, result.next()).tried())
                    .extracting(CredentialTrial.Tried::name)
                    .startsWith("not reached");
            assertThat(credentials.users(right.id)).as("nothing was changed").isZero();
        }
    }

    /** One small Get each, and its further try: what a device that keeps silent hears of it. */
    @Test
    void aSilentDeviceHearsOneSmallRequestForEach() throws Exception {
        AtomicInteger heard = new AtomicInteger();
        AtomicInteger longest = new AtomicInteger();
        try (DatagramSocket mute = new DatagramSocket(new InetSocketAddress(InetAddress.getByName("127.0.7.9"), 0))) {
            Thread listener = new Thread(() -> listen(mute, heard, longest));
            listener.start();
            Credential now = credentials.add(community("used now", "lantern-one"));
            long device = device(now, "127.0.7.9", mute.getLocalPort());
            credentials.add(community("own 1", "lantern-two").at(site.id));
            credentials.add(community("own 2", "lantern-three").at(site.id));
            CredentialTrial.Result result = result(device, 0);
            assertThat(result.letIn()).isEmpty();
            int others = result.tried().size();
            assertThat(others).isGreaterThanOrEqualTo(2).isLessThanOrEqualTo(CredentialTrial.MOST_AT_ONCE);
            // v1 and v2c only in this database's everybody's credentials, if there are any: one Get and one further try
            assertThat(heard.get()).isEqualTo(others * 2);
            assertThat(longest.get()).isLessThan(100);
            mute.close();
            listener.join();
        }
    }

    @Test
    void aSecretThatDoesNotOpenIsSaidAndTheNextIsTried() throws Exception {
        try (Snmpd snmpd = new Snmpd(folder).start()) {
            long device = device(credentials.add(community("used now", "not-the-lantern")), Snmpd.HOST, snmpd.port());
            Credential damaged = credentials.add(community("damaged", "pier").at(site.id));
            Credential right =
                    credentials.add(community("right", Snmpd.COMMUNITY).at(site.id));
            damage(damaged.id);
            CredentialTrial.Result result = result(device, 0);
            assertThat(result.tried().get(0).answer()).startsWith("not tried, its secret does not open");
            assertThat(result.letIn())
                    .hasValueSatisfying(one -> assertThat(one.credentialId()).isEqualTo(right.id));
        }
    }

    private void damage(long id) throws SQLException {
        try (var connection = database.getConnection();
                var change = connection.prepareStatement(
                        "update credential set community = set_byte(community, length(community) - 1,"
                                + " 255 - get_byte(community, length(community) - 1)) where id = ?")) {
            change.setLong(1, id);
            assertThat(change.executeUpdate()).isEqualTo(1);
        }
    }

    private static void listen(DatagramSocket mute, AtomicInteger heard, AtomicInteger longest) {
        DatagramPacket packet = new DatagramPacket(new byte[2_000], 2_000);
        while (!mute.isClosed()) {
            try {
                mute.receive(packet);
                heard.incrementAndGet();
                longest.accumulateAndGet(packet.getLength(), Math::max);
            } catch (IOException e) {
                assertThat(mute.isClosed()).as(e.toString()).isTrue();
            }
        }
    }

    private CredentialTrial.Result result(long device, int skip) throws Exception {
        return trial.others(device, skip).toCompletableFuture().get(60, TimeUnit.SECONDS);
    }

    private long device(Credential credential, String host, int port) {
        DeviceDraft draft = new DeviceDraft(
                "ap-" + UUID.randomUUID(), DeviceKind.ACCESS_POINT, host, port, credential.id, null, "", 60, true);
        return devices.add(site.id, draft).id;
    }

    private CredentialDraft community(String name, String community) {
        return CredentialDraft.community(customer.id, name, 2, community);
    }

    private CredentialDraft user(String name, String user, String auth, String priv) {
        return new CredentialDraft(customer.id, name, 3, "", user, "AUTH_PRIV", "SHA256", auth, "AES128", priv);
    }
}
