package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.ProfileText.Origin;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Opaque;

/** Walks of Debian's snmpd, as its own tools print them and as the SNMP library reads them. */
class WalkSnmpdTest {

    /** Enough of system, interfaces, host and the agent's own subtrees stands still between two walks. */
    private static final Set<String> TREES =
            Set.of("1.3.6.1.2.1.1", "1.3.6.1.2.1.2.2.1", "1.3.6.1.2.1.25.2", "1.3.6.1.2.1.25.3", "1.3.6.1.6.3");

    @TempDir
    static Path folder;

    private static Snmpd snmpd;
    private SnmpVisitor visitor;

    @BeforeAll
    static void start() throws IOException {
        snmpd = new Snmpd(folder).start();
    }

    @AfterAll
    static void stop() {
        snmpd.close();
    }

    @BeforeEach
    void open() throws IOException {
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofMillis(2_000), 2, Duration.ofHours(1), 1_000, 1),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private FetchedWalk live() {
        WalkBounds bounds = new WalkBounds(100_000, Duration.ofNanos(1));
        return visitor.walk(snmpd.asV2(), bounds, variables -> true)
                .orTimeout(60, TimeUnit.SECONDS)
                .join();
    }

    @Test
    void whatTheToolPrintsIsWhatTheLibraryReads() {
        WalkText printed = WalkText.read(snmpd.everything());
        FetchedWalk live = live();
        assertThat(printed.faults()).isEmpty();
        assertThat(live.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(live.complete()).isTrue();
        assertThat(live.walk().size()).isGreaterThan(500);
        int same = 0;
        List<String> different = new ArrayList<>();
        for (int i = 0; i < live.walk().size(); i++) {
            OID oid = live.walk().oid(i);
            if (live.walk().value(i) instanceof Opaque
                    || TREES.stream().noneMatch(tree -> oid.startsWith(new OID(tree)))) {
                continue;
            }
            if (live.walk().value(i).equals(printed.walk().get(oid))) {
                same++;
            } else {
                different.add(oid + ": " + printed.walk().get(oid) + ", then "
                        + live.walk().value(i));
            }
        }
        // Counters, times and memory go on meanwhile; everything else, octet by octet, is the same.
        assertThat(different)
                .allMatch(line -> line.matches(
                        "1\\.3\\.6\\.1\\.2\\.1\\.(1\\.3\\.0|2\\.2\\.1\\.1\\d\\.|2\\.2\\.1\\.2[01]\\.|25\\.2\\.[23]"
                                + "|25\\.3\\.[23]\\.1\\.[25]).*"
                                + "|1\\.3\\.6\\.1\\.6\\.3\\.10\\.2\\.1\\.3\\.0.*"));
        assertThat(same).isGreaterThan(400);
    }

    @Test
    void aVisitToTheWalkIsAVisitToTheDevice() {
        String printed = snmpd.everything();
        Visit live = visitor.visit(new DeviceMemory(snmpd.asV2()), VisitKind.TRACED)
                .orTimeout(30, TimeUnit.SECONDS)
                .join();
        Snapshot stored = new Snapshot(WalkText.read(printed).walk(), live.at());
        WalkReading reading = WalkVisit.read(stored, Optional.empty(), ProfileSet.load(List.of()));
        Visit offline = reading.visit();
        assertThat(offline.profiles()).isEqualTo(live.profiles());
        assertThat(offline.facts().orElseThrow()).isEqualTo(live.facts().orElseThrow());
        for (Metric metric : List.of(Metric.PORT_SPEED, Metric.CLIENTS)) {
            assertThat(offline.device().get(metric)).isEqualTo(live.device().get(metric));
        }
        for (Metric metric : List.of(Metric.MEMORY, Metric.UPTIME)) {
            assertThat(offline.device().has(metric)).isEqualTo(live.device().has(metric));
        }
        assertThat(names(offline)).isEqualTo(names(live));
        assertThat(reading.given()).anySatisfy(line -> {
            assertThat(line.key()).isEqualTo("fact.name");
            assertThat(line.value()).isEqualTo("snmpd-under-test");
            assertThat(line.profile()).isEqualTo("host");
            assertThat(line.raw()).extracting(RawAnswer::oid).containsExactly("1.3.6.1.2.1.1.5.0");
        });
        assertThat(reading.unused()).extracting(UnusedGroup::oid).contains("1.3.6.1.2.1.25.4.2.1");
    }

    private static Set<String> names(Visit visit) {
        return visit.raw().stream().map(RawAnswer::oid).collect(Collectors.toSet());
    }

    @Test
    void theWalkServedAgainPrintsTheSameText() throws IOException {
        WalkText printed = WalkText.read(snmpd.everything());
        try (WalkServer server = new WalkServer(printed.walk())) {
            WalkText again = WalkText.read(snmpd.everything(WalkServer.HOST, server.port()));
            assertThat(again.faults()).isEmpty();
            assertThat(again.walk().text()).isEqualTo(printed.walk().text());
        }
    }

    @Test
    void aWalkStopsAtItsBoundAndWhenItIsStopped() {
        FetchedWalk bounded = visitor.walk(snmpd.asV2(), new WalkBounds(100, Duration.ofNanos(1)), variables -> true)
                .orTimeout(30, TimeUnit.SECONDS)
                .join();
        assertThat(bounded.walk().size()).isEqualTo(100);
        assertThat(bounded.remarks()).singleElement().asString().contains("more than 100 variables");
        FetchedWalk stopped = visitor.walk(
                        snmpd.asV2(), new WalkBounds(100_000, Duration.ofNanos(1)), variables -> false)
                .orTimeout(30, TimeUnit.SECONDS)
                .join();
        assertThat(stopped.complete()).isFalse();
        assertThat(stopped.walk().size()).isPositive();
        SnmpAccess version1 = new SnmpAccess.Community(1, Snmpd.COMMUNITY);
        FetchedWalk first = visitor.walk(
                        snmpd.agent(version1), new WalkBounds(300, Duration.ofNanos(1)), variables -> true)
                .orTimeout(30, TimeUnit.SECONDS)
                .join();
        assertThat(first.walk().size()).as("SNMPv1 by GetNext").isEqualTo(300);
    }

    @Test
    void profilesAreExchangedWhileVisitsGoOn() {
        ProfileSet before = ProfileSet.load(List.of());
        ProfileSet after = before.with(new ProfileText("bench", """
            profile: bench
            select: {object-id: 1.3.6.1.4.1.8072}
            scalars: {fact.serial: 1.3.6.1.2.1.1.4.0}
            """, Origin.WRITTEN));
        List<DeviceMemory> memories = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            memories.add(new DeviceMemory(snmpd.asV2()));
        }
        List<CompletableFuture<Visit>> under = new ArrayList<>();
        memories.forEach(memory -> under.add(visitor.visit(memory, VisitKind.ROUND)));
        visitor.use(after);
        under.forEach(future -> {
            Visit visit = future.orTimeout(60, TimeUnit.SECONDS).join();
            assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(visit.profiles())
                    .as("visits under way end with the old set")
                    .containsExactly("host");
        });
        for (DeviceMemory memory : memories) {
            Visit next = visitor.visit(memory, VisitKind.ROUND)
                    .orTimeout(60, TimeUnit.SECONDS)
                    .join();
            assertThat(next.profiles()).as("surveyed anew at the next visit").containsExactly("bench", "host");
            assertThat(next.facts().orElseThrow().values()).containsEntry(Fact.SERIAL, "it@pebblegate.example");
            Visit third = visitor.visit(memory, VisitKind.ROUND)
                    .orTimeout(60, TimeUnit.SECONDS)
                    .join();
            assertThat(third.requests()).as("and then by the plan").isEqualTo(1);
        }
    }

    @Test
    void twoWalksMakeRatesOfCounters() {
        String first = """
            .1.3.6.1.2.1.1.2.0 = OID: .1.3.6.1.4.1.32473.9.1
            .1.3.6.1.2.1.1.3.0 = Timeticks: (100000) 0:16:40.00
            .1.3.6.1.4.1.32473.9.2.1.1.1.1 = Counter32: 4294967000
            """;
        String later = first.replace("(100000)", "(106000)").replace("4294967000", "704");
        ProfileSet set = ProfileSet.load(List.of(), List.of(new ProfileText("gauges", """
            profile: gauges
            select: {object-id: 1.3.6.1.4.1.32473.9}
            tables:
              - entry: 1.3.6.1.4.1.32473.9.2.1.1
                fold: sum
                columns:
                  device.port_errors: {column: 1, as: rate}
            """, Origin.WRITTEN)));
        Snapshot one = new Snapshot(WalkText.read(first).walk(), Instant.parse("2026-03-04T12:00:00Z"));
        Snapshot two = new Snapshot(WalkText.read(later).walk(), Instant.parse("2026-03-04T12:01:00Z"));
        assertThat(WalkVisit.read(one, Optional.empty(), set).missing())
                .anyMatch(line ->
                        line.key().equals("device.port_errors") && line.why().contains("needs two visits"));
        // RFC 2578 7.1.6: from 4294967000 over the wrap to 704 are 1000, in 60 s by the device's own clock.
        assertThat(WalkVisit.read(one, Optional.of(two), set).given()).anySatisfy(line -> {
            assertThat(line.key()).isEqualTo("device.port_errors");
            assertThat(line.value()).isEqualTo("16.6667");
            assertThat(line.line()).isEqualTo(7);
        });
    }
}
