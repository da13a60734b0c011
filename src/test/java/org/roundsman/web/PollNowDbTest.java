package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.people.Role;

/** Asks an invented agent over real SNMP, from the page to the wire and back. */
@QuarkusTest
class PollNowDbTest {

    private static final Clock NOON = Clock.fixed(Instant.parse("2026-03-04T12:00:00Z"), ZoneOffset.UTC);

    @Inject
    FleetFixture fixture;

    @Inject
    DataSource database;

    @Test
    void whatTheDeviceAnswersIsShownDecodedAndRaw() throws IOException {
        DemoFleet fleet = DemoFleet.of(DemoFleet.SMALLEST, 7, freePort());
        DemoDevice device = fleet.devices().stream()
                .filter(one -> one.isAccessPoint() && one.standing().isEmpty())
                .filter(one -> one.credential() instanceof DemoCredential.Community)
                .findFirst()
                .orElseThrow();
        try (AgentHost agents = AgentHost.start(fleet, new Faults(fleet, NOON), NOON)) {
            String page = polled(device);
            assertThat(page).contains("The device answered").contains("Raw answers");
            assertThat(page).contains(device.serial()).contains(device.fullName());
            // sysName and sysUpTime of SNMPv2-MIB (RFC 3418), as they went over the wire
            assertThat(page)
                    .contains("1.3.6.1.2.1.1.5.0")
                    .contains("1.3.6.1.2.1.1.3.0")
                    .contains("TimeTicks");
            device.radios().forEach(radio -> assertThat(page).contains("Radio " + radio.number()));
        }
    }

    @Test
    void aWrongCommunityLooksLikeSilenceAndIsNeverCalledAWrongPassword() throws IOException {
        FleetFixture.Place place = fixture.place("Saltmarsh");
        try (DatagramSocket mute = new DatagramSocket(FleetFixture.PORT, InetAddress.getByName(FleetFixture.HOST))) {
            assertThat(mute.isBound()).isTrue();
            String page = poll(place.deviceId());
            assertThat(page).contains("No figures: no reply").doesNotContainIgnoringCase("wrong password");
        }
    }

    /** A key that does not fit, or a damaged row: said in words, not as a fault of ours. */
    @Test
    void credentialsThatDoNotOpenAreSaidPlainly() throws SQLException {
        FleetFixture.Place place = fixture.place("Saltmarsh");
        try (var connection = database.getConnection();
                var change = connection.prepareStatement(
                        "update credential set community = set_byte(community, length(community) - 1,"
                                + " 255 - get_byte(community, length(community) - 1)) where id = ?")) {
            change.setLong(1, place.credentialId());
            assertThat(change.executeUpdate()).isEqualTo(1);
        }
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String path = "/devices/" + place.deviceId();
        Response answer = technician.post(path, path + "/poll", Map.of());
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.asString())
                .contains("The device was not asked: its SNMP credentials do not open")
                .contains("Nothing was sent")
                .doesNotContain("quayside-secret");
    }

    private String polled(DemoDevice device) {
        FleetFixture.Place place = fixture.place("Brackwater");
        DemoCredential.Community community = (DemoCredential.Community) device.credential();
        CredentialDraft draft =
                CredentialDraft.community(place.customerId(), "agent keys", community.version(), community.community());
        long credential = fixture.credentials().add(draft).id;
        return poll(fixture.device(place.siteId(), credential, "Real", device.host(), device.port()));
    }

    private String poll(long device) {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String path = "/devices/" + device;
        return technician.post(path, path + "/poll", Map.of()).asString();
    }

    private static int freePort() throws IOException {
        try (DatagramSocket socket = new DatagramSocket()) {
            return socket.getLocalPort();
        }
    }
}
