package org.roundsman.claims.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.system.Rows;

/** What the follower of units reads, for many devices at once. */
public final class FollowTable {

    /** Serial numbers that hold nothing to see are none. */
    private static final String SPOKEN = "btrim(f.value, E' \\t\\r\\n')";

    /** It has to leave the store, which is done for one device at a time. */
    private static final String IN_STORE = "exists (select from spare sp join unit lying on lying.id = sp.unit_id"
            + " where sp.left_at is null and lower(lying.serial) = lower(" + SPOKEN + "))";

    private final Rows rows;

    public FollowTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    /** Where the reading of the timeline goes on; empty before the first time. */
    public Optional<Long> cursor() {
        return rows.one("select event_id from unit_cursor", row -> row.getLong(1));
    }

    public void cursor(long event) {
        rows.run(
                "insert into unit_cursor (event_id) values (?) on conflict (one) do update set event_id ="
                        + " excluded.event_id",
                event);
    }

    /**
     * Begins the stay of every device that says a serial number and never had one, with the fact, unless such a unit lies in
     * store; returns how many.
     */
    public int beginAll() {
        rows.run("insert into unit (customer_id, serial, model_id, mac, known_since) select s.customer_id, " + SPOKEN
                + ", d.model_id, coalesce(m.value, ''), f.since from device_fact f join device d on d.id = f.device_id"
                + " join site s on s.id = d.site_id left join device_fact m on m.device_id = d.id and m.fact ="
                + " 'BASE_MAC' where f.fact = 'SERIAL' and " + SPOKEN + " <> ''"
                + " and not exists (select from unit_stay st where st.device_id = d.id) and not " + IN_STORE
                + " order by f.since, d.id"
                + " on conflict (coalesce(customer_id, 0), lower(serial)) do nothing");
        return rows.run(
                "insert into unit_stay (unit_id, customer_id, site_id, device_id, device_name, site_name, from_at,"
                        + " standing) select u.id, s.customer_id, s.id, d.id, d.name, s.name, f.since, 'READ' from"
                        + " device_fact f join device d on d.id = f.device_id join site s on s.id = d.site_id join unit u"
                        + " on coalesce(u.customer_id, 0) = s.customer_id and lower(u.serial) = lower("
                        + SPOKEN + ")"
                        + " where f.fact = 'SERIAL' and " + SPOKEN + " <> ''"
                        + " and not exists (select from unit_stay st where st.device_id = d.id) and not " + IN_STORE
                        + " on conflict (device_id) where until_at is null do nothing");
    }

    /** Ends the stays in places that have left the fleet; returns how many. */
    public int endLost(Instant at) {
        return rows.run(
                "update unit_stay set until_at = greatest(from_at, ?) where device_id is null and until_at is null",
                at);
    }

    /** Devices of which another unit is known to stand there than they say, or that have yet to say an announced one. */
    public List<Long> unsettled(int most) {
        return rows.list(
                "select f.device_id from device_fact f left join unit_stay st on st.device_id = f.device_id"
                        + " and st.until_at is null left join unit u on u.id = st.unit_id where f.fact = 'SERIAL' and "
                        + SPOKEN + " <> '' and (u.id is null or lower(u.serial) <> lower(" + SPOKEN
                        + ") or st.standing = 'ANNOUNCED') order by f.device_id limit ?",
                row -> row.getLong(1),
                most);
    }

    /** A serial number that a device began to say. */
    public record Spoken(long eventId, long deviceId, String serial, Instant at) {}

    /** Changes of serial numbers on the timeline with a greater number, in the order in which they were noted. */
    public List<Spoken> spoken(long after, int most) {
        return rows.list(
                "select id, device_id, new_value, at from device_event where id > ? and kind = 'FACT_CHANGED'"
                        + " and title in ('Serial number changed', 'Serial number is told') and new_value <> ''"
                        + " order by id limit ?",
                row -> new Spoken(
                        row.getLong("id"),
                        row.getLong("device_id"),
                        row.getString("new_value"),
                        Rows.instant(row, "at").orElseThrow()),
                after,
                most);
    }

    public long lastEvent() {
        return rows.number("select coalesce(max(id), 0) from device_event");
    }
}
