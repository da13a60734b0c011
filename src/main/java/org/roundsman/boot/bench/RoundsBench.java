package org.roundsman.boot.bench;

import io.agroal.api.AgroalDataSource;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.polling.PollTarget;
import org.roundsman.polling.Rounds;
import org.roundsman.polling.RoundsSettings;
import org.roundsman.readings.StoredReadings;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.system.DataFolder;
import org.roundsman.system.EmbeddedDatabase;

/**
 * Full rounds (send, decode, rates, spans, COPY into a real PostgreSQL with fsync on) against agents in another process,
 * and beside them a bare SNMP4J loop in the same run. Prints; compare figures of one run only.
 */
public final class RoundsBench {

    private static final int WARM_UP_SECONDS = 15;

    private final BenchOptions options;
    private final DemoFleet fleet;
    private final SimpleMeterRegistry registry = new SimpleMeterRegistry();

    private RoundsBench(BenchOptions options) {
        this.options = options;
        this.fleet = DemoFleet.of(options.accessPoints(), options.seed(), options.port());
    }

    /** See {@code deploy/bench --help}. */
    public static void main(String... arguments) throws Exception {
        System.setProperty("java.util.logging.manager", "org.jboss.logmanager.LogManager");
        Path folder = Files.createTempDirectory("roundsman-bench");
        try {
            new RoundsBench(BenchOptions.parse(arguments)).run(folder);
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
        System.exit(0);
    }

    private void run(Path folder) throws Exception {
        try (EmbeddedDatabase postgres = EmbeddedDatabase.start(DataFolder.at(folder), 0);
                AgroalDataSource source = BenchDatabase.open(postgres.address())) {
            BenchDatabase.sow(source, fleet);
            rounds(source, folder);
        }
        BareLoop bare = new BareLoop();
        double gets = bare.run(fleet.devices(), Math.min(20, options.seconds()));
        say("bare SNMP4J loop     %,10.0f Gets/s of 20 variables (%d timeouts)", gets, bare.timeouts());
    }

    private void rounds(AgroalDataSource source, Path folder) throws Exception {
        Clock clock = Clock.systemUTC();
        List<PollTarget> targets = fleet.devices().stream().map(this::target).toList();
        try (StoredReadings store = StoredReadings.open(source, clock, folder.resolve("spool"), registry);
                SnmpVisitor visitor = SnmpVisitor.open(SnmpSettings.defaults(), ProfileSet.load(List.of()), clock);
                Rounds rounds = new Rounds(visitor::visit, store, RoundsSettings.defaults(), clock, registry)) {
            store.begin();
            rounds.watch(targets);
            pause(WARM_UP_SECONDS);
            Sample before = sample();
            pause(options.seconds());
            report(
                    sample().since(before),
                    store.backlog().queued() + store.backlog().spilled());
        }
    }

    private PollTarget target(DemoDevice device) {
        SnmpAccess access = device.credential() instanceof DemoCredential.Community community
                ? new SnmpAccess.Community(community.version(), community.community())
                : user((DemoCredential.User) device.credential());
        return new PollTarget(
                device.number() + 1L,
                device.site() + 1L,
                new Agent(device.host(), device.port(), access),
                options.interval(fleet.devices().size()));
    }

    private static SnmpAccess user(DemoCredential.User user) {
        return new SnmpAccess.User(
                user.userName(),
                SnmpAccess.Level.AUTH_PRIV,
                SnmpAccess.AuthProtocol.SHA256,
                user.authPassword(),
                SnmpAccess.PrivProtocol.AES128,
                user.privPassword());
    }

    private record Sample(
            long nanos, double rounds, double skipped, double requests, double timeouts, double rows, Usage usage) {
        Sample since(Sample before) {
            return new Sample(
                    nanos - before.nanos,
                    rounds - before.rounds,
                    skipped - before.skipped,
                    requests - before.requests,
                    timeouts - before.timeouts,
                    rows - before.rows,
                    usage.since(before.usage));
        }
    }

    private Sample sample() {
        return new Sample(
                System.nanoTime(),
                count("rounds.done"),
                count("rounds.skipped"),
                count("rounds.requests"),
                count("rounds.timeouts"),
                count("readings.rows"),
                Usage.now());
    }

    private double count(String name) {
        return registry.get("roundsman." + name).counter().count();
    }

    private void report(Sample s, long waiting) {
        double seconds = s.nanos / 1e9;
        long heap = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() >> 20;
        var lag = registry.get("roundsman.rounds.lag").timer().takeSnapshot().percentileValues();
        say(
                "devices              %,10d, one round every %s",
                fleet.devices().size(), options.interval(fleet.devices().size()));
        say(
                "rounds               %,10.0f /s  (%.0f skipped, %.0f timeouts)",
                s.rounds / seconds, s.skipped, s.timeouts);
        say("requests             %,10.0f /s", s.requests / seconds);
        say("rows copied          %,10.0f /s  (%d readings waiting at the end)", s.rows / seconds, waiting);
        say(
                "CPU per round        %10.0f us poller, %.0f us database, %.0f us agents",
                micros(s.usage.poller(), s), micros(s.usage.database(), s), micros(s.usage.agents(), s));
        say("lag, 99th percentile %10.1f ms", lag.length < 2 ? Double.NaN : lag[1].value(TimeUnit.MILLISECONDS));
        say("heap in use          %,10d MB", heap);
    }

    private static double micros(Duration cpu, Sample s) {
        return cpu.toNanos() / 1e3 / Math.max(1, s.rounds);
    }

    /** Waits for the measurement, which is made by other threads. */
    static void pause(int seconds) throws InterruptedException {
        new CountDownLatch(1).await(seconds, TimeUnit.SECONDS);
    }

    private static void say(String format, Object... values) {
        System.out.printf(format + "%n", values);
    }
}
