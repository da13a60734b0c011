package org.roundsman.discovery.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.discovery.Neighbourhood;
import org.roundsman.discovery.SweepState;
import org.roundsman.discovery.store.Finding;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.Snmpd;
import org.roundsman.testing.TestDatabase;

/** Sweeps over loopback addresses with real agents; which of them answer is drawn by lot and known. */
class SweepRunnerDbTest {

    private static final Duration LONG = Duration.ofMinutes(3);
    private static final String RANGE = "127.80.0.0-127.80.3.255";
    private static final int ADDRESSES = 1_024;
    private static final int AGENTS = 300;

    private SweepsInDatabase sweeps;
    private Neighbourhood street;
    private final Map<String, Integer> versions = new HashMap<>();

    @BeforeEach
    void aStreetOfAgents() throws IOException {
        sweeps = new SweepsInDatabase(TestDatabase.fresh("sweeps"));
        street = new Neighbourhood();
        Random lot = new Random(20_261);
        while (versions.size() < AGENTS) {
            String host = "127.80." + lot.nextInt(4) + "." + lot.nextInt(256);
            if (!versions.containsKey(host)) {
                int version = 1 + versions.size() % 2;
                versions.put(host, version);
                street.house(host, version, version == 1 ? "elder" : "lantern", versions.size());
            }
        }
        sweeps.key(new SnmpAccess.Community(2, "lantern"));
        sweeps.key(new SnmpAccess.Community(1, "elder"));
    }

    @AfterEach
    void close() throws IOException {
        sweeps.close();
        street.close();
    }

    private Map<String, Integer> found(long sweep) {
        return sweeps.store.findings().of(sweep).stream()
                .filter(f -> f.outcome() == Outcome.ANSWERED)
                .collect(Collectors.toMap(
                        Finding::host, f -> ((SnmpAccess.Community) sweeps.keys.get(f.credentialId())).version()));
    }

    @Test
    void exactlyThoseThatAnswerAreFoundEachWithTheCredentialsItTakes() {
        long sweep = sweeps.sweep(sweeps.site("Saltmarsh"), RANGE, List.of(street.port()));
        try (SweepRunner runner = sweeps.runner(sweeps::ask, 2_000, 4)) {
            runner.takeUp();
            await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
        }
        assertThat(found(sweep)).isEqualTo(versions);
        assertThat(sweeps.store.sweeps().done(sweep)).hasSize(ADDRESSES);
        assertThat(sweeps.store.findings().of(sweep))
                .allSatisfy(f -> assertThat(f.facts().values().get(Fact.SERIAL)).startsWith("TR22-"));
    }

    @Test
    void aSweepThatWasCutOffGoesOnAndAsksNobodyTwice() {
        long sweep = sweeps.sweep(sweeps.site("Saltmarsh"), RANGE, List.of(street.port()));
        AtomicInteger visits = new AtomicInteger();
        SweepRun.Asker dying =
                (memory, kind) -> visits.incrementAndGet() > 900 ? new CompletableFuture<>() : sweeps.ask(memory, kind);
        SweepRunner killed = sweeps.runner(dying, 2_000, 4);
        killed.takeUp();
        AtomicInteger before = new AtomicInteger(-1);
        await().atMost(LONG).pollInterval(Duration.ofSeconds(3)).until(() -> {
            int stored = sweeps.store.sweeps().done(sweep).size();
            return stored > 0 && before.getAndSet(stored) == stored;
        });
        Set<Integer> done = new HashSet<>(sweeps.store.sweeps().done(sweep).keySet());
        assertThat(done).hasSizeBetween(1, ADDRESSES - 1);
        sweeps.asked.clear();
        try (SweepRunner next = sweeps.runner(sweeps::ask, 2_000, 4)) {
            next.takeUp();
            await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
        }
        killed.close();
        assertThat(found(sweep)).isEqualTo(versions);
        assertThat(sweeps.asked).hasSize(ADDRESSES - done.size());
    }

    @Test
    void aCancelledSweepKeepsWhatItFoundAndGoesOnWhenResumed() {
        long sweep = sweeps.sweep(sweeps.site("Saltmarsh"), RANGE, List.of(street.port()));
        try (SweepRunner runner = sweeps.runner(sweeps::ask, 400, 4)) {
            runner.takeUp();
            await().atMost(LONG).until(() -> !sweeps.store.findings().of(sweep).isEmpty());
            assertThat(sweeps.store
                            .sweeps()
                            .turn(sweep, SweepState.RUNNING, SweepState.CANCELLED, java.time.Instant.now()))
                    .isTrue();
            runner.takeUp();
            await().atMost(LONG).until(() -> !runner.hasBegun(sweep));
            int found = found(sweep).size();
            assertThat(found).isBetween(1, AGENTS - 1);
            assertThat(sweeps.state(sweep)).isEqualTo(SweepState.CANCELLED);
            sweeps.store.sweeps().turn(sweep, SweepState.CANCELLED, SweepState.RUNNING, java.time.Instant.now());
            runner.takeUp();
            await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
        }
        assertThat(found(sweep)).isEqualTo(versions);
    }

    @Test
    void oneMoreThanMayRunAtOnceWaitsForItsTurn() {
        long first = sweeps.sweep(sweeps.site("Saltmarsh"), "127.80.0.0/26", List.of(street.port()));
        long second = sweeps.sweep(sweeps.site("Brackwater"), "127.80.1.0/26", List.of(street.port()));
        AtomicInteger early = new AtomicInteger();
        SweepRun.Asker asker = (memory, kind) -> {
            if (memory.agent().host().startsWith("127.80.1.") && sweeps.state(first) == SweepState.RUNNING) {
                early.incrementAndGet();
            }
            return sweeps.ask(memory, kind);
        };
        try (SweepRunner runner = sweeps.runner(asker, 2_000, 1)) {
            runner.takeUp();
            await().atMost(LONG).until(() -> sweeps.state(second) == SweepState.DONE);
        }
        assertThat(sweeps.state(first)).isEqualTo(SweepState.DONE);
        assertThat(early).hasValue(0);
    }

    @Test
    void whatWasSetAsideIsNotAsked() {
        long site = sweeps.site("Saltmarsh");
        String host = versions.keySet().iterator().next();
        sweeps.store.plans().setAside(site, host, street.port(), "tester", java.time.Instant.now());
        long sweep = sweeps.sweep(site, host, List.of(street.port()));
        try (SweepRunner runner = sweeps.runner(sweeps::ask, 2_000, 4)) {
            runner.takeUp();
            await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
        }
        assertThat(sweeps.asked).isEmpty();
        assertThat(sweeps.store.sweeps().counts(sweep)).containsOnly(Map.entry(-1, 1));
    }

    /** Debian's snmpd, and what net-snmp's own snmpget says of it. */
    @Test
    void snmpdIsFoundByTheCredentialsItKnowsAndItsFactsAreWhatSnmpgetPrints(@TempDir Path folder) throws IOException {
        try (Snmpd snmpd = new Snmpd(folder).start()) {
            sweeps.keys.clear();
            sweeps.key(new SnmpAccess.Community(2, "wrong"));
            sweeps.key(user("confidential-wrong"));
            long right = sweeps.key(user("confidential"));
            long sweep = sweeps.sweep(sweeps.site("Saltmarsh"), Snmpd.HOST, List.of(snmpd.port()));
            try (SweepRunner runner = sweeps.runner(sweeps::ask, 2_000, 4)) {
                runner.takeUp();
                await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
            }
            Finding finding = sweeps.store.findings().of(sweep).get(0);
            assertThat(finding.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(finding.credentialId()).isEqualTo(right);
            Map<Fact, String> said = finding.facts().values();
            Map<String, String> printed =
                    snmpd.get("1.3.6.1.2.1.1.1.0", "1.3.6.1.2.1.1.2.0", "1.3.6.1.2.1.1.5.0", "1.3.6.1.2.1.1.6.0");
            assertThat(said.get(Fact.DESCRIPTION)).isEqualTo(printed.get("1.3.6.1.2.1.1.1.0"));
            assertThat("." + said.get(Fact.OBJECT_ID)).isEqualTo(printed.get("1.3.6.1.2.1.1.2.0"));
            assertThat(said.get(Fact.NAME)).isEqualTo(printed.get("1.3.6.1.2.1.1.5.0"));
            assertThat(said.get(Fact.LOCATION)).isEqualTo(printed.get("1.3.6.1.2.1.1.6.0"));
        }
    }

    @Test
    void snmpdThatRefusesEveryCredentialIsAFindingWithTheReason(@TempDir Path folder) throws IOException {
        try (Snmpd snmpd = new Snmpd(folder).start()) {
            sweeps.keys.clear();
            sweeps.key(new SnmpAccess.Community(2, "wrong"));
            sweeps.key(new SnmpAccess.User("nobody", SnmpAccess.Level.NO_AUTH, null, "", null, ""));
            long sweep = sweeps.sweep(sweeps.site("Saltmarsh"), Snmpd.HOST, List.of(snmpd.port()));
            try (SweepRunner runner = sweeps.runner(sweeps::ask, 2_000, 4)) {
                runner.takeUp();
                await().atMost(LONG).until(() -> sweeps.state(sweep) == SweepState.DONE);
            }
            assertThat(sweeps.store.findings().of(sweep))
                    .singleElement()
                    .extracting(Finding::outcome)
                    .isEqualTo(Outcome.USER_UNKNOWN);
        }
    }

    private static SnmpAccess.User user(String privacy) {
        return new SnmpAccess.User(
                "walker",
                SnmpAccess.Level.AUTH_PRIV,
                SnmpAccess.AuthProtocol.SHA256,
                "authentication",
                SnmpAccess.PrivProtocol.AES128,
                privacy);
    }
}
