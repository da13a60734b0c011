package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;

/** What one lost key or one damaged row may cost; the rule is the project's own. */
@QuarkusTest
class FleetPollTargetsDbTest {

    @Inject
    FleetPollTargets targets;

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

    private Device readable;
    private Device unreadable;

    @BeforeEach
    void twoDevicesOfWhichOneHasCredentialsThatDoNotOpen() throws SQLException {
        Customer customer = customers.add(new CustomerDraft("Quillfeather School " + UUID.randomUUID(), "invented"));
        Site site = sites.add(customer.id, site());
        Credential good = credentials.add(CredentialDraft.community(customer.id, "good", 2, "quill-read"));
        Credential bad = credentials.add(CredentialDraft.community(customer.id, "bad", 2, "quill-lost"));
        readable = devices.add(site.id, draft("ap-1", "192.0.2.1", good));
        unreadable = devices.add(site.id, draft("ap-2", "192.0.2.2", bad));
        try (var connection = database.getConnection();
                var change = connection.prepareStatement(
                        "update credential set community = set_byte(community, length(community) - 1,"
                                + " 255 - get_byte(community, length(community) - 1)) where id = ?")) {
            change.setLong(1, bad.id);
            assertThat(change.executeUpdate()).isEqualTo(1);
        }
    }

    @AfterEach
    void gone() {
        devices.remove(readable.id);
        devices.remove(unreadable.id);
    }

    @Test
    void credentialsThatDoNotOpenKeepOnlyTheirOwnDevicesFromBeingWatched() {
        List<Long> watched =
                targets.watched().stream().map(PollTarget::deviceId).toList();
        assertThat(watched).contains(readable.id).doesNotContain(unreadable.id);
    }

    private static SiteDraft site() {
        return new SiteDraft("Main building", "Europe/Berlin", "", "", "", "DE", "", null, null, List.of(), List.of());
    }

    private static DeviceDraft draft(String name, String host, Credential credential) {
        return new DeviceDraft(name, DeviceKind.ACCESS_POINT, host, 161, credential.id, null, "", 60, false);
    }
}
