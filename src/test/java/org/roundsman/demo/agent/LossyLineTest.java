package org.roundsman.demo.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.SetClock;

class LossyLineTest {

    private static final int REQUESTS = 50_000;

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11);
    private final Faults faults = Faults.byHandOnly(fleet, clock);
    private final DemoDevice device = fleet.devices().get(5);

    private long lost() {
        AgentState agent = new AgentState(fleet, device, faults);
        agent.look(clock.millis());
        return IntStream.range(0, REQUESTS).filter(i -> agent.loses()).count();
    }

    /** Bounds: four standard deviations of a binomial share of 0.02, sqrt(0.02 * 0.98 / n) each. */
    @Test
    void aLossyLineLosesTwoRequestsOfAHundredAndASoundOneNone() {
        assertThat(lost()).isZero();
        faults.switchOn(Fault.LOSSY, device);
        double deviation = Math.sqrt(0.02 * 0.98 / REQUESTS);
        assertThat(lost() / (double) REQUESTS).isBetween(0.02 - 4 * deviation, 0.02 + 4 * deviation);
        faults.switchOff(Fault.LOSSY, device);
        assertThat(lost()).isZero();
    }
}
