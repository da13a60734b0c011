package org.roundsman.claims.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Spare;
import org.roundsman.shared.Page;
import org.roundsman.system.Rows;

/** The table of spares. Works in the transaction of this thread. */
public final class SpareTable {

    private static final String WHOLE = "select sp.id as spare_id, sp.room_id, sp.site_id, coalesce(r.name ||"
            + " coalesce(', ' || rc.name, ''), s.name || ', ' || sc.name) as lies, sp.since, sp.note, sp.left_at,"
            + " sp.left_why, sp.left_by, coalesce((select concat_ws(', ', nullif(p.supplier, ''), nullif('order ' ||"
            + " p.order_number, 'order '), p.bought_on) from purchase p where lower(p.serial) = lower(u.serial) and"
            + " (p.customer_id = u.customer_id or u.customer_id is null and p.customer_id in (select st.customer_id from"
            + " unit_stay st where st.unit_id = u.id)) order by p.id desc limit 1), '') as purchase, "
            + UnitTable.COLUMNS
            + " from spare sp join unit u on u.id = sp.unit_id left join customer c on c.id = u.customer_id"
            + " left join model m on m.id = u.model_id left join store_room r on r.id = sp.room_id"
            + " left join customer rc on rc.id = r.customer_id left join site s on s.id = sp.site_id"
            + " left join customer sc on sc.id = s.customer_id";

    /** Whose place it is where it lies: a spare in the firm's own room is shown to those who see everybody. */
    private static final String SEEN = " (?::bigint is null or coalesce(r.customer_id, s.customer_id) = ?::bigint)";

    private static final String LAY =
            " from spare sp left join store_room r on r.id = sp.room_id left join site s on s.id = sp.site_id";

    private static final String BY_PLACE =
            " order by lower(coalesce(r.name, s.name)), lower(coalesce(m.name, '')), lower(u.serial), sp.id";

    private final Rows rows;

    public SpareTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    private static Spare spare(ResultSet row) throws SQLException {
        return new Spare(
                row.getLong("spare_id"),
                UnitTable.unit(row),
                Rows.id(row, "room_id"),
                Rows.id(row, "site_id"),
                row.getString("lies"),
                Rows.instant(row, "since").orElseThrow(),
                row.getString("note"),
                row.getString("purchase"),
                Rows.instant(row, "left_at"),
                row.getString("left_why"),
                row.getString("left_by"));
    }

    /** What lies in store, by place, model and serial number; of one customer, or null for all. */
    public List<Spare> present(Long customer) {
        return rows.list(
                WHOLE + " where sp.left_at is null and" + SEEN + BY_PLACE, SpareTable::spare, customer, customer);
    }

    /** One page of the same; the last one where there are fewer. */
    public Page<Spare> page(Long customer, int wanted, int size) {
        long total = rows.number("select count(*)" + LAY + " where sp.left_at is null and" + SEEN, customer, customer);
        int last = (int) Math.max(1, (total + size - 1) / size);
        int number = Math.min(wanted, last);
        List<Spare> found = rows.list(
                WHOLE + " where sp.left_at is null and" + SEEN + BY_PLACE + " limit ? offset ?",
                SpareTable::spare,
                customer,
                customer,
                size,
                (number - 1L) * size);
        return new Page<>(found, number, size, total);
    }

    /** The same by id, after that id. */
    public List<Spare> after(Long customer, long id, int most) {
        return rows.list(
                WHOLE + " where sp.left_at is null and sp.id > ? and" + SEEN + " order by sp.id limit ?",
                SpareTable::spare,
                id,
                customer,
                customer,
                most);
    }

    /** What lies there or lay there. */
    public Optional<Spare> find(Long customer, long id) {
        return rows.one(WHOLE + " where sp.id = ? and" + SEEN, SpareTable::spare, id, customer, customer);
    }

    /** Where a unit lies; empty where it lies in no store. */
    public Optional<Spare> ofUnit(long unitId) {
        return rows.one(WHOLE + " where sp.unit_id = ? and sp.left_at is null", SpareTable::spare, unitId);
    }

    /** Where a unit lay, the latest first. */
    public List<Spare> past(long unitId) {
        return rows.list(
                WHOLE + " where sp.unit_id = ? order by sp.since desc, sp.id desc limit 100",
                SpareTable::spare,
                unitId);
    }

    public long add(long unitId, OptionalLong room, OptionalLong site, Instant since, String note) {
        return rows.number(
                "insert into spare (unit_id, room_id, site_id, since, note) values (?, ?::bigint, ?::bigint, ?, ?)"
                        + " returning id",
                unitId,
                room,
                site,
                since,
                note);
    }

    /** The unit is not in store any more; returns whether it was. */
    public boolean leave(long unitId, Instant at, String why, String by) {
        return rows.run(
                        "update spare set left_at = greatest(since, ?), left_why = ?, left_by = ?"
                                + " where unit_id = ? and left_at is null",
                        at,
                        why,
                        by,
                        unitId)
                > 0;
    }

    /** Puts it back where it lay last, if it left for that reason, as the unit of whose it was. */
    public boolean putBack(long unitId, String why) {
        Optional<Long> back = rows.one(
                "update spare set left_at = null, left_why = '', left_by = '' where id = (select max(id) from spare"
                        + " where unit_id = ?) and left_why = ? and not exists (select from spare where unit_id = ? and"
                        + " left_at is null) returning id",
                row -> row.getLong(1),
                unitId,
                why,
                unitId);
        // Out of the firm's own room: the customer's if it stood or lay there before, else the firm's.
        back.ifPresent(id -> rows.run(
                "update unit u set customer_id = coalesce((select coalesce(r.customer_id, s.customer_id)" + LAY
                        + " where sp.id = ?), (select u.customer_id where exists (select from unit_stay st where"
                        + " st.unit_id = u.id and st.customer_id = u.customer_id) or exists (select" + LAY
                        + " where sp.unit_id = u.id and coalesce(r.customer_id, s.customer_id) = u.customer_id)))"
                        + " where u.id = ?",
                id,
                unitId));
        return back.isPresent();
    }
}
