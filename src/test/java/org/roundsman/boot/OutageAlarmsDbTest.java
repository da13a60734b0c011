package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.measure.Condition;
import org.roundsman.readings.DeviceState;
import org.roundsman.readings.DeviceStates;
import org.roundsman.topology.Topology;

@QuarkusTest
@TestProfile(OwnDatabase.class)
class OutageAlarmsDbTest {

    @Inject
    InventedRounds world;

    @Inject
    DeviceStates states;

    @Inject
    Devices devices;

    @Inject
    Topology topology;

    @BeforeEach
    void allAnswerAndTheirWiringIsKnown() {
        world.begin();
        Set<Long> ids = world.watched().map(world::id).collect(Collectors.toSet());
        await().atMost(Duration.ofSeconds(90)).until(() -> {
            Map<Long, DeviceState> now = states.of(ids);
            return now.size() == ids.size()
                    && now.values().stream().allMatch(s -> s.condition() == Condition.ANSWERING && s.misses() == 0);
        });
        await().atMost(Duration.ofSeconds(120)).until(() -> world.watched()
                .filter(d -> d.isAccessPoint())
                .allMatch(d ->
                        topology.pathUp(CustomerScope.everyone(), world.id(d)).size() >= 3));
    }

    @Test
    void harness() {
        assertThat(world.watched().count()).isGreaterThan(40);
    }
}
