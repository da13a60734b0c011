package org.roundsman.topology;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.TableReading;
import org.roundsman.topology.read.Decoding;
import org.roundsman.topology.read.Snapshot;
import org.roundsman.topology.read.States;
import org.roundsman.topology.store.PlaceRows;
import org.roundsman.topology.store.ReadingRows;
import org.roundsman.topology.store.WatchedRows;
import org.roundsman.topology.store.Work;

/** Stores what readings of wiring bring, and works places out. Each call is one transaction. */
@ApplicationScoped
public class WiringStore {

    private final DataSource database;
    private final TopologyConfig config;
    private final Clock clock;

    @Inject
    public WiringStore(DataSource database, TopologyConfig config, Clock clock) {
        this.database = database;
        this.config = config;
        this.clock = clock;
    }

    /**
     * What a full reading brought.
     *
     * @param lldp the device offers LLDP
     * @param freshAddresses it has addresses that were not known: where others learnt them is worth another look
     */
    public record Stored(boolean lldp, boolean freshAddresses) {}

    /** Stores a full reading, and where devices of the site hang by now. An unanswered one is only noted. */
    public Stored full(long deviceId, long siteId, TableReading reading) {
        return Work.whole(database, connection -> {
            ReadingRows rows = new ReadingRows(connection, deviceId);
            if (!rows.present()) {
                return new Stored(false, false);
            }
            if (reading.outcome() != Outcome.ANSWERED) {
                rows.failed(reading.at(), reading.outcome());
                return new Stored(true, false);
            }
            Snapshot snapshot = Decoding.of(reading);
            Set<String> known = ReadingRows.siteMacs(connection, siteId);
            boolean fresh = rows.full(snapshot, reading.requests(), known, config.oldAfter(), config.forgetAfter());
            workOut(connection, siteId, reading.at());
            return new Stored(snapshot.whole().offered().lldp(), fresh && !known.containsAll(snapshot.addresses()));
        });
    }

    /** Stores a short reading. An unanswered one is only noted. */
    public void states(long deviceId, TableReading reading) {
        Work.whole(database, connection -> {
            ReadingRows rows = new ReadingRows(connection, deviceId);
            if (rows.present()) {
                if (reading.outcome() == Outcome.ANSWERED) {
                    rows.states(States.of(reading));
                } else {
                    rows.failed(reading.at(), reading.outcome());
                }
            }
            return null;
        });
    }

    /** Works the places of a site out anew, since its devices changed. */
    public void workOut(long siteId) {
        Work.whole(
                database,
                connection -> workOut(connection, siteId, clock.instant().truncatedTo(ChronoUnit.MILLIS)));
    }

    private int workOut(Connection connection, long siteId, Instant at) throws SQLException {
        return PlaceRows.workOut(connection, siteId, config.oldAfter(), config.edgePortAddresses(), at);
    }

    /** Every device that is not paused. */
    List<Watched> watched() {
        return Work.ask(
                database,
                connection -> WatchedRows.all(
                        connection, (id, site, kind, read, lldp) -> new Watched(id, site, kind, read, lldp)));
    }
}
