package org.roundsman.claims.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.ReplacedUnits;
import org.roundsman.claims.Stay;
import org.roundsman.system.Rows;

/** The table of stays. Works in the transaction of this thread. */
public final class StayTable {

    private static final String WHOLE =
            "select st.id, st.unit_id, u.serial, coalesce(m.maker || ' ' || m.name, '') as model, st.customer_id,"
                    + " st.site_id, coalesce(s.name, st.site_name) as site, coalesce(s.time_zone, 'UTC') as time_zone,"
                    + " st.device_id, coalesce(d.name, st.device_name) as device, st.from_at, st.until_at, st.standing,"
                    + " st.announced_by, st.announced_at, st.said_instead, st.said_since from unit_stay st join unit u on"
                    + " u.id = st.unit_id left join model m on m.id = u.model_id left join site s on s.id = st.site_id"
                    + " left join device d on d.id = st.device_id";

    private final Rows rows;

    public StayTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    private static Stay stay(ResultSet row) throws SQLException {
        return new Stay(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("serial"),
                row.getString("model"),
                row.getLong("customer_id"),
                Rows.id(row, "site_id"),
                row.getString("site"),
                ZoneId.of(row.getString("time_zone")),
                Rows.id(row, "device_id"),
                row.getString("device"),
                Rows.instant(row, "from_at").orElseThrow(),
                Rows.instant(row, "until_at"),
                Stay.Standing.valueOf(row.getString("standing")),
                row.getString("announced_by"),
                Rows.instant(row, "announced_at"),
                row.getString("said_instead"),
                Rows.instant(row, "said_since"));
    }

    /** The stay that goes on in a place; nobody else changes it until the end of this thread's transaction. */
    public Optional<Stay> hold(long deviceId) {
        rows.list(
                "select id from unit_stay where device_id = ? and until_at is null for update",
                row -> row.getLong(1),
                deviceId);
        return now(deviceId);
    }

    public Optional<Stay> now(long deviceId) {
        return rows.one(WHOLE + " where st.device_id = ? and st.until_at is null", StayTable::stay, deviceId);
    }

    /** The stay that held in a place at that moment. */
    public Optional<Stay> at(long deviceId, Instant moment) {
        return rows.one(
                WHOLE + " where st.device_id = ? and st.from_at <= ? and (st.until_at is null or st.until_at > ?)"
                        + " order by st.from_at desc, st.id desc limit 1",
                StayTable::stay,
                deviceId,
                moment,
                moment);
    }

    /** Everywhere that the unit stands today: more than one place where two devices say the same serial number. */
    public List<Stay> nowOf(long unitId) {
        return rows.list(
                WHOLE + " where st.unit_id = ? and st.until_at is null order by st.from_at, st.id",
                StayTable::stay,
                unitId);
    }

    /** Everywhere that a unit of this serial number stands today, whosever it is. */
    public List<Stay> nowOf(String serial) {
        return rows.list(
                WHOLE + " where lower(u.serial) = lower(?) and st.until_at is null order by st.from_at, st.id",
                StayTable::stay,
                serial);
    }

    /** Of a unit, the latest first, at most so many. */
    public List<Stay> ofUnit(long unitId, int most) {
        return rows.list(
                WHOLE + " where st.unit_id = ? order by st.from_at desc, st.id desc limit ?",
                StayTable::stay,
                unitId,
                most);
    }

    /** Of a place, the latest first, at most so many. */
    public List<Stay> ofDevice(long deviceId, int most) {
        return rows.list(
                WHOLE + " where st.device_id = ? order by st.from_at desc, st.id desc limit ?",
                StayTable::stay,
                deviceId,
                most);
    }

    /** Units of a customer that took another's place between these moments, by time. */
    public List<ReplacedUnits.Replaced> replaced(long customerId, Instant from, Instant to) {
        return rows.list(
                "select st.site_id, coalesce(s.name, st.site_name) as site, coalesce(s.time_zone, 'UTC') as time_zone,"
                        + " st.device_id, coalesce(d.name, st.device_name) as device, old.serial as old_serial, u.serial,"
                        + " st.from_at from unit_stay st join unit u on u.id = st.unit_id join lateral (select p.unit_id"
                        + " from unit_stay p where p.device_id = st.device_id and (p.from_at, p.id) < (st.from_at, st.id)"
                        + " order by p.from_at desc, p.id desc limit 1) before on before.unit_id <> st.unit_id"
                        + " join unit old on old.id = before.unit_id left join site s on s.id = st.site_id"
                        + " left join device d on d.id = st.device_id where st.customer_id = ? and st.from_at >= ?"
                        + " and st.from_at < ? and st.said_instead = '' order by st.from_at, st.id",
                StayTable::replaced,
                customerId,
                from,
                to);
    }

    private static ReplacedUnits.Replaced replaced(ResultSet row) throws SQLException {
        return new ReplacedUnits.Replaced(
                Rows.id(row, "site_id"),
                row.getString("site"),
                ZoneId.of(row.getString("time_zone")),
                row.getLong("device_id"),
                row.getString("device"),
                row.getString("old_serial"),
                row.getString("serial"),
                Rows.instant(row, "from_at").orElseThrow());
    }

    /** When the last unit before left; empty where none did. */
    public Optional<Instant> ended(long deviceId) {
        return rows.one(
                "select max(until_at) as until_at from unit_stay where device_id = ? having max(until_at) is not null",
                row -> Rows.instant(row, "until_at").orElseThrow(),
                deviceId);
    }

    /** Begins a stay that goes on; false when another one goes on there, since a moment ago perhaps. */
    public boolean begin(
            long unitId, long deviceId, Instant from, Stay.Standing standing, String by, Instant announced) {
        return rows.run(
                        "insert into unit_stay (unit_id, customer_id, site_id, device_id, device_name, site_name,"
                                + " from_at, standing, announced_by, announced_at) select ?, s.customer_id, s.id, d.id,"
                                + " d.name, s.name, ?, ?, ?, ? from device d join site s on s.id = d.site_id where"
                                + " d.id = ? on conflict (device_id) where until_at is null do nothing",
                        unitId,
                        from,
                        standing.name(),
                        by,
                        announced,
                        deviceId)
                > 0;
    }

    public void end(long id, Instant at) {
        rows.run("update unit_stay set until_at = greatest(from_at, ?) where id = ?", at, id);
    }

    /** Moves the beginning. */
    public void from(long id, Instant at) {
        rows.run("update unit_stay set from_at = ? where id = ?", at, id);
    }

    /** Lets it go on again. */
    public void reopen(long id) {
        rows.run("update unit_stay set until_at = null where id = ?", id);
    }

    public void remove(long id) {
        rows.run("delete from unit_stay where id = ?", id);
    }

    /** The device says what was announced. */
    public void confirm(long id, String by, Instant announced) {
        rows.run(
                "update unit_stay set standing = 'CONFIRMED', said_instead = '', said_since = null, announced_by = ?,"
                        + " announced_at = ? where id = ?",
                by,
                announced,
                id);
    }

    /** The device says something else. */
    public void contradict(long id, String serial, Instant since) {
        rows.run("update unit_stay set said_instead = ?, said_since = ? where id = ?", serial, since, id);
    }

    /** What the device says of its serial number today, and when it was last read; empty where it says none. */
    public Optional<org.roundsman.claims.StayRules.Said> said(long deviceId) {
        return rows.one(
                "select f.value, f.since, coalesce(y.last_at, f.since) as last_at from device_fact f"
                        + " left join device_survey y on y.device_id = f.device_id"
                        + " where f.device_id = ? and f.fact = 'SERIAL'",
                row -> org.roundsman.claims.StayRules.Said.today(
                        row.getString("value"),
                        Rows.instant(row, "since").orElseThrow(),
                        Rows.instant(row, "last_at").orElseThrow()),
                deviceId);
    }

    /** The base address that a device says, or empty. */
    public String mac(long deviceId) {
        return rows.one(
                        "select value from device_fact where device_id = ? and fact = 'BASE_MAC'",
                        row -> row.getString(1),
                        deviceId)
                .orElse("");
    }

    /** Model and customer of a place. */
    public record Place(long customerId, OptionalLong modelId) {}

    /** Empty when the device is not there. */
    public Optional<Place> place(long deviceId) {
        return rows.one(
                "select s.customer_id, d.model_id from device d join site s on s.id = d.site_id where d.id = ?",
                row -> new Place(row.getLong("customer_id"), Rows.id(row, "model_id")),
                deviceId);
    }
}
