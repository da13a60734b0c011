package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import javax.sql.DataSource;
import org.roundsman.system.Rows;
import org.roundsman.warranty.CalendarAddress;

/** Addresses of calendars, and what calendars were told last. */
public final class CalendarTable {

    private static final String WHOLE = """
            select a.*, p.name as person, coalesce(c.name, '') as customer
            from calendar_address a
            join account p on p.id = a.account_id
            left join customer c on c.id = a.customer_id
            """;

    /** The firm's own people: who is a customer's sees that one customer only, and no prices. */
    private static final String MAY = " (not p.disabled and p.role in ('TECHNICIAN', 'ACCOUNT_MANAGER', 'OWNER')) ";

    private static final Duration EXACT = Duration.ofMinutes(1);

    private final Rows rows;

    public CalendarTable(DataSource database) {
        this.rows = new Rows(database, "warranty");
    }

    /** A day of a customer on which cover ends. */
    public record Day(long customerId, LocalDate day) {}

    /** What was told of a day last. */
    public record Told(UUID uid, int sequence, Instant changedAt) {}

    public List<CalendarAddress> of(long accountId) {
        return rows.list(WHOLE + " where a.account_id = ? order by a.id desc", CalendarTable::address, accountId);
    }

    public List<CalendarAddress> goodOfOthers(long accountId) {
        return rows.list(
                WHOLE + " where a.account_id <> ? and a.revoked_at is null order by lower(p.name), a.id desc",
                CalendarTable::address,
                accountId);
    }

    public Optional<CalendarAddress> find(long id) {
        return rows.one(WHOLE + " where a.id = ?", CalendarTable::address, id);
    }

    /** Good ones whose account lost the right to them. */
    public List<CalendarAddress> lost() {
        return rows.list(WHOLE + " where a.revoked_at is null and not" + MAY + "order by a.id", CalendarTable::address);
    }

    private static CalendarAddress address(ResultSet row) throws SQLException {
        return new CalendarAddress(
                row.getLong("id"),
                row.getLong("account_id"),
                row.getString("person"),
                row.getString("name"),
                Rows.id(row, "customer_id"),
                row.getString("customer"),
                Rows.instant(row, "created_at").orElseThrow(),
                Rows.instant(row, "used_at"),
                Rows.instant(row, "revoked_at"));
    }

    /** Whether the account may have addresses; it stays as it is until the end of this thread's transaction. */
    public boolean holdUsable(long accountId) {
        return rows.one("select 1 from account p where p.id = ? and" + MAY + "for update", row -> 1, accountId)
                .isPresent();
    }

    public Optional<String> customer(long id) {
        return rows.one("select name from customer where id = ?", row -> row.getString(1), id);
    }

    public CalendarAddress add(long accountId, String name, byte[] hash, OptionalLong customerId, Instant at) {
        long id = rows.one(
                        "insert into calendar_address (account_id, name, hash, customer_id, created_at) values (?, ?, ?, ?,"
                                + " ?) returning id",
                        row -> row.getLong(1),
                        accountId,
                        name,
                        hash,
                        customerId.isPresent() ? customerId.getAsLong() : null,
                        at)
                .orElseThrow();
        return find(id).orElseThrow();
    }

    public void revoke(long id, Instant at) {
        rows.run("update calendar_address set revoked_at = ? where id = ? and revoked_at is null", at, id);
    }

    /** The good address of that hash, whose use is noted at most once a minute. */
    public Optional<CalendarAddress> use(byte[] hash, Instant at) {
        Optional<CalendarAddress> found =
                rows.one(WHOLE + " where a.hash = ? and a.revoked_at is null and" + MAY, CalendarTable::address, hash);
        found.filter(one ->
                        one.usedAt().isEmpty() || one.usedAt().get().plus(EXACT).isBefore(at))
                .ifPresent(one -> rows.run("update calendar_address set used_at = ? where id = ?", at, one.id()));
        return found;
    }

    /**
     * Notes what is told of each day now, and returns how often and when it changed.
     *
     * @param digests SHA-256 of the words, in hexadecimal digits
     */
    public Map<Day, Told> tell(Map<Day, String> digests, Instant at) {
        List<Day> days = List.copyOf(digests.keySet());
        Long[] customers = days.stream().map(Day::customerId).toArray(Long[]::new);
        String[] dates = days.stream().map(day -> day.day().toString()).toArray(String[]::new);
        String[] hashes = days.stream().map(digests::get).toArray(String[]::new);
        rows.run(
                "insert into calendar_day (customer_id, day, digest, changed_at) select c, d::date, decode(h, 'hex'),"
                        + " ?::timestamptz from unnest(?::bigint[], ?::text[], ?::text[]) t (c, d, h) order by c, d on"
                        + " conflict (customer_id, day) do update set sequence = calendar_day.sequence + 1, digest ="
                        + " excluded.digest, changed_at = greatest(excluded.changed_at, calendar_day.changed_at) where"
                        + " calendar_day.digest <> excluded.digest",
                at,
                customers,
                dates,
                hashes);
        Map<Day, Told> told = new HashMap<>();
        rows.list(
                "select t.customer_id, t.day, t.uid, t.sequence, t.changed_at from calendar_day t join"
                        + " unnest(?::bigint[], ?::text[]) w (c, d) on t.customer_id = w.c and t.day = w.d::date",
                row -> told.put(
                        new Day(row.getLong(1), Columns.day(row, "day")),
                        new Told(
                                row.getObject("uid", UUID.class),
                                row.getInt("sequence"),
                                Rows.instant(row, "changed_at").orElseThrow())),
                customers,
                dates);
        return told;
    }
}
