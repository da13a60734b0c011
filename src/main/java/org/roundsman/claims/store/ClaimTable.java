package org.roundsman.claims.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimChange;
import org.roundsman.claims.ClaimSearch;
import org.roundsman.claims.ClaimState;
import org.roundsman.shared.Page;
import org.roundsman.system.Rows;

/** The tables of claims and their changes. Works in the transaction of this thread. */
public final class ClaimTable {

    private static final String WHOLE =
            "select k.*, c.name as customer, coalesce(n.serial, '') as new_serial from claim k"
                    + " join customer c on c.id = k.customer_id left join unit n on n.id = k.new_unit_id";

    private static final String SEEN = " (?::bigint is null or k.customer_id = ?::bigint)";

    private static final String SEARCH = SEEN + " and (?::text is null or k.state = ?::text) and (not ? or k.state <>"
            + " 'CLOSED') and (?::bigint is null or k.customer_id = ?::bigint)";

    private final Rows rows;

    public ClaimTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    private static Claim claim(ResultSet row) throws SQLException {
        return new Claim(
                row.getLong("id"),
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getLong("unit_id"),
                Rows.id(row, "site_id"),
                Rows.id(row, "device_id"),
                Rows.id(row, "alarm_id"),
                ClaimState.valueOf(row.getString("state")),
                Rows.instant(row, "opened_at").orElseThrow(),
                row.getString("opened_by"),
                Rows.instant(row, "changed_at").orElseThrow(),
                known(row),
                new Claim.Papers(
                        row.getString("party"),
                        row.getString("reference"),
                        Rows.day(row, "shipped_on"),
                        row.getString("tracking")),
                Rows.id(row, "new_unit_id"),
                row.getString("new_serial"));
    }

    private static Claim.Known known(ResultSet row) throws SQLException {
        return new Claim.Known(
                row.getString("serial"),
                row.getString("model"),
                row.getString("place"),
                ZoneId.of(row.getString("time_zone")),
                row.getString("fault"),
                row.getString("terms"),
                row.getString("cover"),
                Rows.texts(row, "derivation"),
                Rows.texts(row, "evidence"),
                Rows.texts(row, "failure"));
    }

    /** Of one customer, or null for all. */
    public Optional<Claim> find(Long customer, long id) {
        return rows.one(WHOLE + " where k.id = ? and" + SEEN, ClaimTable::claim, id, customer, customer);
    }

    /** The same, and keeps others from changing it until the end of this thread's transaction. */
    public Optional<Claim> hold(Long customer, long id) {
        rows.list("select id from claim where id = ? for update", row -> row.getLong(1), id);
        return find(customer, id);
    }

    /** The claim of a unit that is not closed. */
    public Optional<Claim> open(long unitId) {
        return rows.one(WHOLE + " where k.unit_id = ? and k.state <> 'CLOSED'", ClaimTable::claim, unitId);
    }

    /** Of one customer, or null for all; the newest first. */
    public List<Claim> ofUnit(Long customer, long unitId) {
        return rows.list(
                WHOLE + " where k.unit_id = ? and" + SEEN + " order by k.opened_at desc, k.id desc limit 200",
                ClaimTable::claim,
                unitId,
                customer,
                customer);
    }

    /** Of a place, those that are not closed first, then the newest. */
    public List<Claim> ofDevice(long deviceId, int most) {
        return rows.list(
                WHOLE + " where k.device_id = ? order by k.state = 'CLOSED', k.opened_at desc, k.id desc limit ?",
                ClaimTable::claim,
                deviceId,
                most);
    }

    /** One page, those that are not closed first, of them the oldest first. */
    public Page<Claim> search(Long customer, ClaimSearch search) {
        String state = search.state().map(Enum::name).orElse(null);
        long total = rows.number(
                "select count(*) from claim k where" + SEARCH,
                customer,
                customer,
                state,
                state,
                search.unfinished(),
                search.customerId(),
                search.customerId());
        int last = (int) Math.max(1, (total + search.size() - 1) / search.size());
        int number = Math.min(search.number(), last);
        List<Claim> found = rows.list(
                WHOLE + " where" + SEARCH
                        + " order by k.state = 'CLOSED', case when k.state <> 'CLOSED' then k.opened_at"
                        + " end, k.opened_at desc, k.id limit ? offset ?",
                ClaimTable::claim,
                customer,
                customer,
                state,
                state,
                search.unfinished(),
                search.customerId(),
                search.customerId(),
                search.size(),
                (number - 1L) * search.size());
        return new Page<>(found, number, search.size(), total);
    }

    /** By id, those after that id. */
    public List<Claim> after(Long customer, Optional<ClaimState> state, long id, int most) {
        String wanted = state.map(Enum::name).orElse(null);
        return rows.list(
                WHOLE + " where k.id > ? and (?::text is null or k.state = ?::text) and" + SEEN
                        + " order by k.id limit ?",
                ClaimTable::claim,
                id,
                wanted,
                wanted,
                customer,
                customer,
                most);
    }

    /** Stores a new claim and returns its id; the claim's own id does not count. */
    public long add(Claim claim) {
        Claim.Known known = claim.known();
        return rows.number(
                "insert into claim (customer_id, unit_id, site_id, device_id, alarm_id, state, opened_at, opened_by,"
                        + " changed_at, serial, model, place, time_zone, fault, terms, cover, derivation, evidence,"
                        + " failure, party) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) returning"
                        + " id",
                claim.customerId(),
                claim.unitId(),
                claim.siteId(),
                claim.deviceId(),
                claim.alarmId(),
                claim.state().name(),
                claim.openedAt(),
                claim.openedBy(),
                claim.changedAt(),
                known.serial(),
                known.model(),
                known.place(),
                known.zone().getId(),
                known.fault(),
                known.terms(),
                known.cover(),
                known.derivation(),
                known.evidence(),
                known.failure(),
                claim.papers().party());
    }

    public void state(long id, ClaimState state, Instant at) {
        rows.run("update claim set state = ?, changed_at = ? where id = ?", state.name(), at, id);
    }

    public void papers(long id, Claim.Papers papers) {
        rows.run(
                "update claim set party = ?, reference = ?, shipped_on = ?, tracking = ? where id = ?",
                papers.party(),
                papers.reference(),
                papers.shippedOn().orElse(null),
                papers.tracking(),
                id);
    }

    public void replacement(long id, OptionalLong unitId) {
        rows.run("update claim set new_unit_id = ? where id = ?", unitId, id);
    }

    public void change(long id, Instant at, String by, Optional<ClaimState> from, ClaimState to, String note) {
        rows.run(
                "insert into claim_change (claim_id, at, by, from_state, to_state, note) values (?, ?, ?, ?, ?, ?)",
                id,
                at,
                by,
                from.map(Enum::name).orElse(""),
                to.name(),
                note);
    }

    /** The newest first. */
    public List<ClaimChange> changes(long id) {
        return rows.list(
                "select id, at, by, from_state, to_state, note from claim_change where claim_id = ? order by id desc"
                        + " limit 500",
                row -> new ClaimChange(
                        row.getLong("id"),
                        Rows.instant(row, "at").orElseThrow(),
                        row.getString("by"),
                        row.getString("from_state").isEmpty()
                                ? Optional.empty()
                                : Optional.of(ClaimState.valueOf(row.getString("from_state"))),
                        ClaimState.valueOf(row.getString("to_state")),
                        row.getString("note")),
                id);
    }
}
