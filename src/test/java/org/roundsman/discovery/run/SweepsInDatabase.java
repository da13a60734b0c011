package org.roundsman.discovery.run;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.roundsman.discovery.AddressRanges;
import org.roundsman.discovery.Sweep;
import org.roundsman.discovery.SweepState;
import org.roundsman.discovery.store.FindingTable;
import org.roundsman.discovery.store.PlanTable;
import org.roundsman.discovery.store.SweepTable;
import org.roundsman.discovery.store.Tables;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

/** Sweeps over a real database and real sockets, without the container. */
final class SweepsInDatabase implements AutoCloseable {

    final Tables tables;
    final SweepRunner.Store store;
    final SnmpVisitor visitor;
    final Map<Long, SnmpAccess> keys = new LinkedHashMap<>();
    final Set<String> asked = ConcurrentHashMap.newKeySet();

    SweepsInDatabase(DataSource source) throws IOException {
        tables = new Tables(source);
        store = new SweepRunner.Store(
                new SweepTable(tables), new PlanTable(tables), new FindingTable(tables, new ObjectMapper()));
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofMillis(1_500), 1, Duration.ofHours(1), 2_000, 1),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
    }

    long site(String name) {
        long customer = id("insert into customer (name) values (?) returning id", name);
        return id(
                "insert into site (customer_id, name, time_zone) values (?, 'Pier', 'Europe/Berlin') returning id",
                customer);
    }

    long key(SnmpAccess access) {
        long id = id(
                "insert into credential (name, version, community) values (?, 2, '\\x00') returning id",
                "keys " + UUID.randomUUID());
        keys.put(id, access);
        return id;
    }

    private long id(String sql, Object... parameters) {
        return tables.list(sql, row -> row.getLong(1), parameters).get(0);
    }

    long sweep(long site, String ranges, List<Integer> ports) {
        int total = AddressRanges.read(ranges).questions(ports.size());
        return store.sweeps()
                .add(new Sweep(
                        0,
                        site,
                        SweepState.RUNNING,
                        ranges,
                        ports,
                        List.copyOf(keys.keySet()),
                        total,
                        "tester",
                        Instant.now(),
                        Optional.empty(),
                        ""))
                .orElseThrow();
    }

    SweepRunner runner(SweepRun.Asker asker, int perSecond, int atOnce) {
        return runner(asker, new SweepRunner.Bounds(perSecond, 200, atOnce));
    }

    SweepRunner runner(SweepRun.Asker asker, SweepRunner.Bounds bounds) {
        KeyRing ring = ids -> new KeyRing.Opened(
                ids.stream().map(id -> new Key(id, keys.get(id))).toList(), "");
        return new SweepRunner(store, ring, asker, bounds, Clock.systemUTC());
    }

    CompletableFuture<Visit> ask(DeviceMemory memory, VisitKind kind) {
        asked.add(memory.agent().host());
        return visitor.visit(memory, kind);
    }

    SweepState state(long sweep) {
        return store.sweeps().find(sweep).orElseThrow().state();
    }

    @Override
    public void close() {
        visitor.close();
    }
}
