package org.roundsman.discovery.run;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.awaitility.Awaitility;
import org.roundsman.discovery.Neighbourhood;
import org.roundsman.discovery.SweepState;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.testing.TestDatabase;

/**
 * How long a sweep of 4,096 loopback addresses takes of which 300 answer to the last of the credentials. Arguments:
 * requests a second, addresses in flight, number of credentials.
 */
final class SweepBenchmark {

    private SweepBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        int perSecond = Integer.parseInt(arguments[0]);
        int inFlight = Integer.parseInt(arguments[1]);
        int credentials = Integer.parseInt(arguments[2]);
        SnmpSettings settings = new SnmpSettings(Duration.ofSeconds(1), 1, Duration.ofHours(1), 2_000, 1);
        try (SweepsInDatabase sweeps = new SweepsInDatabase(TestDatabase.fresh("sweep_benchmark"));
                Neighbourhood street = new Neighbourhood();
                SnmpVisitor visitor = SnmpVisitor.open(settings, ProfileSet.load(List.of()), Clock.systemUTC())) {
            people(street);
            for (int i = credentials; i >= 1; i--) {
                sweeps.key(new SnmpAccess.Community(2, "word " + i));
            }
            AtomicLong sent = new AtomicLong();
            long sweep = sweeps.sweep(sweeps.site("Benchmark"), "127.84.0.0-127.84.15.255", List.of(street.port()));
            SweepRun.Asker counted =
                    (memory, kind) -> visitor.visit(memory, kind).whenComplete((visit, fault) -> {
                        if (visit != null) {
                            sent.addAndGet(visit.requests());
                        }
                    });
            long begin = System.nanoTime();
            try (SweepRunner runner = sweeps.runner(counted, new SweepRunner.Bounds(perSecond, inFlight, 4))) {
                runner.takeUp();
                Awaitility.await()
                        .atMost(Duration.ofHours(1))
                        .pollInterval(Duration.ofMillis(200))
                        .until(() -> sweeps.state(sweep) == SweepState.DONE);
            }
            say(
                    arguments,
                    (System.nanoTime() - begin) / 1e9,
                    sweeps.store.findings().of(sweep).size(),
                    sent.get());
        }
    }

    /** 300 agents at addresses drawn by lot. */
    private static void people(Neighbourhood street) throws IOException {
        Random lot = new Random(1);
        Set<String> hosts = new HashSet<>();
        while (hosts.size() < 300) {
            String host = "127.84." + lot.nextInt(16) + "." + lot.nextInt(256);
            if (hosts.add(host)) {
                street.house(host, 2, "word 1", hosts.size());
            }
        }
    }

    private static void say(String[] arguments, double seconds, int found, long sent) {
        System.out.printf(
                "%s requests/s, %s in flight, %s credentials: %.1f s, %d found, %d requests, %.1f a second%n",
                arguments[0], arguments[1], arguments[2], seconds, found, sent, sent / seconds);
    }
}
