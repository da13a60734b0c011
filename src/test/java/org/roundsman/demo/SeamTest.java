package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.demo.model.Outlook;
import org.roundsman.demo.past.DevicePast;
import org.roundsman.measure.Metric;

/** What history says of a quarter hour is what snmpget brings back in it: live readings go on without a seam. */
class SeamTest {

    private static final String CPU = "1.3.6.1.4.1.32473.2.2.1.0";
    private static final String MEMORY = "1.3.6.1.4.1.32473.2.2.2.0";
    private static final String IN = "1.3.6.1.2.1.31.1.1.1.6.1";
    private static final String OUT = "1.3.6.1.2.1.31.1.1.1.10.1";
    private static final String RADIO = "1.3.6.1.4.1.32473.2.3.1.1.";
    private static final int SECONDS = 900;

    private final SetClock clock = new SetClock("2026-11-25T10:00:00Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_163);
    private final Faults faults = new Faults(fleet, clock);

    @ParameterizedTest
    @ValueSource(strings = {"2026-11-25T10:00:00Z", "2026-11-25T15:15:00Z", "2026-11-22T03:45:00Z"})
    void aQuarterHourOfHistoryIsWhatPollingFindsInIt(String start) {
        Instant from = Instant.parse(start);
        clock.set(from);
        try (AgentHost host = AgentHost.start(fleet, faults, clock)) {
            List<DemoDevice> devices = steady(from);
            assertThat(devices).hasSizeGreaterThan(5);
            devices.forEach(device -> compare(device, from));
            assertThat(host.answers()).isGreaterThanOrEqualTo(4L * devices.size());
        }
    }

    /** Some access points that answer through the quarter hour and a little longer, and do not restart in it. */
    private List<DemoDevice> steady(Instant from) {
        List<DemoDevice> steady = new ArrayList<>();
        Outlook outlook = new Outlook();
        for (DemoDevice device : fleet.devices()) {
            long to = from.toEpochMilli() + 2 * SECONDS * 1000L;
            boolean quiet =
                    faults.silences(device, from.toEpochMilli() - 1000, to).isEmpty();
            if (device.isAccessPoint() && quiet && device.number() % 17 == 0) {
                faults.look(device, to, outlook);
                assertThat(outlook.restart).isLessThan(from.toEpochMilli());
                steady.add(device);
            }
        }
        return steady;
    }

    private void compare(DemoDevice device, Instant from) {
        List<NetSnmp.Said> polls = new ArrayList<>();
        for (int minute = 0; minute <= 15; minute += 5) {
            clock.set(from.plus(Duration.ofMinutes(minute)));
            polls.add(NetSnmp.ask("snmpget", device, names(device)));
        }
        HistorySink.DeviceQuarter past = new DevicePast(fleet, device, faults)
                .quarters(from, from.plusSeconds(SECONDS))
                .get(0);
        assertThat(past.samples()).isEqualTo(3);
        assertThat(past.figures().raw(Metric.CPU)).isEqualTo(mean(polls, CPU), within(1e-9));
        assertThat(past.figures().raw(Metric.MEMORY)).isEqualTo(mean(polls, MEMORY), within(1e-9));
        // a counter rounds down: at most one octet is lost in a quarter hour
        assertThat(past.figures().raw(Metric.PORT_IN)).isEqualTo(8 * rate(polls, IN), within(8.0 / SECONDS));
        assertThat(past.figures().raw(Metric.PORT_OUT)).isEqualTo(8 * rate(polls, OUT), within(8.0 / SECONDS));
        double clients = 0;
        for (DemoRadio radio : device.radios()) {
            compareRadio(past.radios().get(radio.number() - 1), polls, radio.number());
            clients += mean(polls, RADIO + "8." + radio.number());
        }
        assertThat(past.figures().raw(Metric.CLIENTS)).isEqualTo(clients, within(1e-9));
    }

    private static void compareRadio(HistorySink.RadioQuarter past, List<NetSnmp.Said> polls, int radio) {
        assertThat(past.mean().raw(Metric.RADIO_CLIENTS)).isEqualTo(mean(polls, RADIO + "8." + radio), within(1e-9));
        double delivered = rate(polls, RADIO + "10." + radio);
        if (past.mean().has(Metric.UTILISATION)) {
            double percent = mean(polls, RADIO + "9." + radio) / 255 * 100;
            assertThat(past.mean().raw(Metric.UTILISATION)).isEqualTo(percent, within(1e-9));
            assertThat(past.mean().raw(Metric.NOISE)).isEqualTo(mean(polls, RADIO + "7." + radio), within(1e-9));
            double retried = rate(polls, RADIO + "11." + radio);
            // both counters round down, by at most one frame each
            double unsure = 100 * 2 / (delivered * SECONDS);
            assertThat(past.mean().raw(Metric.RETRIES)).isEqualTo(100 * retried / delivered, within(unsure));
        } else {
            assertThat(delivered).isZero();
        }
    }

    private static String[] names(DemoDevice device) {
        List<String> names = new ArrayList<>(List.of(CPU, MEMORY, IN, OUT));
        for (DemoRadio radio : device.radios()) {
            for (int column = 7; column <= 11; column++) {
                names.add(RADIO + column + "." + radio.number());
            }
        }
        return names.toArray(String[]::new);
    }

    private static double mean(List<NetSnmp.Said> polls, String name) {
        return polls.subList(0, 3).stream()
                .mapToLong(said -> said.number(name))
                .average()
                .orElseThrow();
    }

    private static double rate(List<NetSnmp.Said> polls, String name) {
        return (double) (polls.get(3).number(name) - polls.get(0).number(name)) / SECONDS;
    }
}
