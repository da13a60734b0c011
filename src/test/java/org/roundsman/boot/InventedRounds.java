package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.ShiftedClock;
import org.roundsman.polling.PollTarget;
import org.roundsman.polling.PollTargets;
import org.roundsman.polling.Rounds;

/**
 * Four sites of four invented customers, sown into the service, answering on loopback, and visited by its own rounds every
 * two seconds. The agents live in a quiet hour of the past or future, and their time can be skipped over, so that nobody
 * waits for an access point to start.
 */
@ApplicationScoped
public class InventedRounds {

    static final Duration INTERVAL = Duration.ofSeconds(2);
    static final String CLINIC = "Market Row";
    static final String SHOP = "Riverside";
    static final String PIER = "South Pier";
    static final String SCHOOL = "Garden Building";
    private static final List<String> WATCHED = List.of(CLINIC, SHOP, PIER, SCHOOL);
    private static final int CUSTOMERS = 4;
    private static final int PORT = 26_181;

    private final DemoSowing sowing;
    private final PollTargets targets;
    private final Rounds rounds;

    private DemoFleet fleet;
    private Map<Integer, Long> ids;
    private ShiftedClock clock;
    private Faults faults;
    private AgentHost agents;

    @Inject
    InventedRounds(DemoSowing sowing, PollTargets targets, Rounds rounds) {
        this.sowing = sowing;
        this.targets = targets;
        this.rounds = rounds;
    }

    /** Begins once; later calls change nothing. */
    synchronized void begin() {
        if (agents != null) {
            return;
        }
        fleet = someOf(DemoFleet.of(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED, PORT));
        clock = new ShiftedClock(quietTime());
        faults = Faults.byHandOnly(fleet, clock);
        agents = AgentHost.start(fleet, faults, clock);
        ids = sowing.sow(fleet);
        rounds.watch(watched()
                .map(device -> targets.find(id(device)).orElseThrow())
                .map(target -> new PollTarget(target.deviceId(), target.siteId(), target.agent(), INTERVAL))
                .toList());
    }

    synchronized void end() {
        rounds.watch(List.of());
        if (agents != null) {
            agents.close();
            agents = null;
        }
    }

    /** The first customers with their sites and devices: numbers still have no gaps. */
    private static DemoFleet someOf(DemoFleet all) {
        List<DemoSite> sites =
                all.sites().stream().filter(site -> site.customer() < CUSTOMERS).toList();
        List<DemoDevice> devices =
                sites.stream().flatMap(site -> site.devices().stream()).toList();
        int accessPoints =
                (int) devices.stream().filter(DemoDevice::isAccessPoint).count();
        return new DemoFleet(accessPoints, all.seed(), all.customers().subList(0, CUSTOMERS), sites, devices);
    }

    /** A time on a working day with an hour before and three after it in which no watched device restarts. */
    private Instant quietTime() {
        Faults plain = Faults.byHandOnly(fleet, java.time.Clock.systemUTC());
        Instant first = Instant.parse("2026-11-25T10:00:00Z");
        return Stream.iterate(first, at -> at.plus(Duration.ofDays(1)))
                .limit(60)
                .filter(at -> watched().allMatch(device -> plain.silences(
                                device,
                                at.minus(Duration.ofHours(1)).toEpochMilli(),
                                at.plus(Duration.ofHours(3)).toEpochMilli())
                        .isEmpty()))
                .findFirst()
                .orElseThrow();
    }

    /** Every device that is visited. */
    Stream<DemoDevice> watched() {
        return WATCHED.stream().flatMap(name -> site(name).devices().stream());
    }

    DemoSite site(String name) {
        return fleet.sites().stream()
                .filter(site -> site.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    DemoDevice device(String name) {
        return fleet.devices().stream()
                .filter(device -> device.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** The id that the service gave it. */
    long id(DemoDevice device) {
        return ids.get(device.number());
    }

    Faults faults() {
        return faults;
    }

    void on(Fault fault, String name) {
        faults.switchOn(fault, device(name));
    }

    /** Switches it off; what starts again has started when this returns. */
    void off(Fault fault, String name) {
        faults.switchOff(fault, device(name));
        clock.skip(Duration.ofMinutes(3));
    }
}
