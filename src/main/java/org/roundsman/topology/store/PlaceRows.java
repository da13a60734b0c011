package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.DeviceEvents;
import org.roundsman.timeline.EventKind;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.find.Evidence;
import org.roundsman.topology.find.Finding;

/** Works out the places of a site's devices anew and stores what changed, in the caller's transaction. */
public final class PlaceRows {

    /** Together with the site's id the number of the lock under which one at a time works places out. */
    private static final long LOCK = 7_402_000_000_000_000L;

    private PlaceRows() {}

    /**
     * Works out and stores; a device that moved to another port gets an event.
     *
     * @param at when the change was seen
     * @return how many devices moved
     */
    public static int workOut(Connection connection, long siteId, int oldAfter, int edgeMacs, Instant at)
            throws SQLException {
        Jdbc.rows(connection, "select pg_advisory_xact_lock(?)", row -> 0, LOCK + siteId);
        Evidence evidence = EvidenceRows.of(connection, siteId, oldAfter, edgeMacs);
        Map<Long, Attachment> before = ofSite(connection, siteId);
        Map<Long, Attachment> places = Finding.places(evidence);
        Map<Long, String> names = EvidenceRows.names(evidence.members());
        List<DeviceEvent> events = new ArrayList<>();
        List<Object[]> rows = new ArrayList<>();
        places.forEach((id, place) -> {
            Attachment old = before.get(id);
            if (!place.equals(old)) {
                rows.add(row(place));
            }
            moved(old, place, names, at).ifPresent(events::add);
        });
        store(connection, rows);
        DeviceEvents.add(connection, events);
        return events.size();
    }

    private static Optional<DeviceEvent> moved(Attachment old, Attachment now, Map<Long, String> names, Instant at) {
        boolean said = now.how() == How.PERSON && (old == null || old.how() != How.PERSON || !samePlace(old, now));
        boolean changed = old != null && old.known() && !samePlace(old, now);
        if (!said && !changed) {
            return Optional.empty();
        }
        String title = said
                ? "Switch port set by a person"
                : now.known() ? "Hangs on another port" : "Not known any more on which port it hangs";
        return Optional.of(new DeviceEvent(
                now.deviceId(),
                at,
                EventKind.PORT_CHANGED,
                title,
                old == null ? "" : title(old, names),
                title(now, names),
                now.reason()));
    }

    /** Ports are the same by their names, where both have one: numbers may change when a device restarts. */
    private static boolean samePlace(Attachment a, Attachment b) {
        if (!a.parentId().equals(b.parentId())) {
            return false;
        }
        boolean named = !a.portName().isEmpty() && !b.portName().isEmpty();
        return named ? a.portName().equals(b.portName()) : a.port().equals(b.port());
    }

    private static String title(Attachment place, Map<Long, String> names) {
        return place.known()
                ? place.portTitle() + " of "
                        + names.getOrDefault(place.parentId().getAsLong(), "a device that was removed")
                : "";
    }

    private static Object[] row(Attachment place) {
        return new Object[] {
            place.deviceId(),
            place.parentId(),
            place.port(),
            place.portName(),
            place.how().name(),
            place.reason(),
            place.notes(),
            place.old(),
            place.seenAt().orElse(null)
        };
    }

    private static void store(Connection connection, List<Object[]> rows) throws SQLException {
        Jdbc.batch(
                connection,
                "insert into wiring_attachment (device_id, parent_id, port, port_name, how, reason, notes, old, seen_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (device_id) do update set"
                        + " parent_id = excluded.parent_id, port = excluded.port, port_name = excluded.port_name,"
                        + " how = excluded.how, reason = excluded.reason, notes = excluded.notes, old = excluded.old,"
                        + " seen_at = excluded.seen_at",
                rows);
    }

    /** The stored places of a site's devices. */
    public static Map<Long, Attachment> ofSite(Connection connection, long siteId) throws SQLException {
        Map<Long, Attachment> places = new HashMap<>();
        Jdbc.rows(
                        connection,
                        "select a.* from wiring_attachment a join device d on d.id = a.device_id where d.site_id = ?",
                        PlaceRows::place,
                        siteId)
                .forEach(place -> places.put(place.deviceId(), place));
        return places;
    }

    private static Attachment place(ResultSet row) throws SQLException {
        OptionalInt port = Jdbc.number(row, "port");
        return new Attachment(
                row.getLong("device_id"),
                Jdbc.wide(row, "parent_id"),
                port,
                row.getString("port_name"),
                How.valueOf(row.getString("how")),
                row.getString("reason"),
                Jdbc.texts(row, "notes"),
                row.getBoolean("old"),
                Jdbc.moment(row, "seen_at"));
    }
}
