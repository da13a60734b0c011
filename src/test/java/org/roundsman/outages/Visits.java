package org.roundsman.outages;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.TableReading;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;
import org.roundsman.topology.read.Tables;

/** Visits of invented agents on loopback, as rounds make them: silent ones with one small request. */
final class Visits implements AutoCloseable {

    private static final int MANY_ROWS = 20_000;
    private static final int SILENT_AFTER = 3;

    private final SnmpVisitor visitor;
    private final int intervalSeconds;
    private final Map<Long, DeviceMemory> rounds = new HashMap<>();
    private final Map<Long, DeviceMemory> asides = new HashMap<>();
    private final Map<Long, DemoDevice> devices = new HashMap<>();
    private final Map<Long, Integer> misses = new HashMap<>();

    Visits(Clock clock, Duration interval) {
        // loopback answers at once, so that nobody has to wait as long as on a line; and the hour from one reading of
        // facts to
        // the next is one of the machine's time, of which little passes here
        SnmpSettings settings = new SnmpSettings(Duration.ofMillis(300), 1, Duration.ofSeconds(2), MANY_ROWS, 2);
        intervalSeconds = (int) interval.toSeconds();
        try {
            visitor = SnmpVisitor.open(settings, ProfileSet.load(List.of()), clock);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void watch(long id, DemoDevice device) {
        Agent agent = new Agent(device.host(), device.port(), access(device.credential()));
        devices.put(id, device);
        rounds.put(id, new DeviceMemory(agent));
        asides.put(id, new DeviceMemory(agent));
    }

    boolean reachable(long id) {
        return misses.getOrDefault(id, 0) < SILENT_AFTER;
    }

    CompletableFuture<Reading> round(long id) {
        return visitor.visit(rounds.get(id), reachable(id) ? VisitKind.ROUND : VisitKind.PROBE)
                .thenApply(visit -> {
                    boolean missed = visit.outcome().kind() == Outcome.Kind.UNANSWERED;
                    synchronized (misses) {
                        misses.merge(id, 1, (before, one) -> missed ? before + 1 : 0);
                        misses.computeIfPresent(id, (i, count) -> missed ? count : 0);
                    }
                    return reading(id, visit);
                });
    }

    private Reading reading(long id, Visit visit) {
        return visit.outcome().kind() == Outcome.Kind.UNANSWERED
                ? Reading.empty(id, visit.at(), visit.outcome(), intervalSeconds)
                : new Reading(
                        id,
                        visit.at(),
                        visit.outcome(),
                        intervalSeconds,
                        visit.device(),
                        visit.radios(),
                        visit.networks(),
                        visit.facts());
    }

    /** All of a device's wiring, or the states of its ports alone. */
    TableReading wiring(long id, boolean full) {
        return visitor.tables(asides.get(id), full ? Tables.of(devices.get(id).kind()) : Tables.states(), MANY_ROWS)
                .join();
    }

    @Override
    public void close() {
        visitor.close();
    }

    private static SnmpAccess access(DemoCredential credential) {
        if (credential instanceof DemoCredential.Community c) {
            return new SnmpAccess.Community(c.version(), c.community());
        }
        DemoCredential.User user = (DemoCredential.User) credential;
        return new SnmpAccess.User(
                user.userName(),
                SnmpAccess.Level.AUTH_PRIV,
                SnmpAccess.AuthProtocol.SHA256,
                user.authPassword(),
                SnmpAccess.PrivProtocol.AES128,
                user.privPassword());
    }
}
