package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.web.Browser;
import org.roundsman.web.FleetFixture;

/** The rule is the project's own: a service with real devices has no switches for faults. */
@QuarkusTest
class FaultPagesDbTest {

    @Inject
    FleetFixture fixture;

    @Test
    void withoutAnInventedFleetThereAreNoSwitchesForFaults() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(technician.get("/invented-faults").statusCode()).isEqualTo(404);
        String token = technician.token("/password");
        Map<String, String> fault = Map.of("where", "house-ap-03", "fault", "UPLINK_LOST");
        assertThat(technician.send("/invented-faults", token, fault).statusCode())
                .isEqualTo(404);
    }
}
