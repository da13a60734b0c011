package org.roundsman.firmware.store;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.firmware.ExceptionDraft;
import org.roundsman.firmware.MinimumDraft;
import org.roundsman.firmware.ReleaseDraft;

/** Writes the policy, in the transaction of the thread. */
public final class PolicyWriting {

    private static final Set<String> TABLES = Set.of("firmware_release", "firmware_minimum", "firmware_exception");

    private final Sql sql;

    public PolicyWriting(DataSource database) {
        this.sql = new Sql(database);
    }

    /** Lets no other transaction change the line's policy until this one ends. */
    public void hold(long lineId) {
        sql.rows("select id from firmware_line where id = ? for update", row -> row.getLong(1), lineId);
    }

    public long add(long lineId, ReleaseDraft draft) {
        return id(
                "insert into firmware_release (line_id, model_id, version, stand, reason, withdrawn_on, released_on)"
                        + " values (?, ?::bigint, ?, ?, ?, ?::date, ?::date) returning id",
                lineId,
                Optional.ofNullable(draft.modelId()),
                draft.version(),
                draft.stand().name(),
                draft.reason(),
                Optional.ofNullable(draft.withdrawnOn()),
                Optional.ofNullable(draft.releasedOn()));
    }

    public long change(long id, ReleaseDraft draft) {
        return id(
                "update firmware_release set stand = ?, reason = ?, withdrawn_on = ?::date, released_on = ?::date"
                        + " where id = ? returning id",
                draft.stand().name(),
                draft.reason(),
                Optional.ofNullable(draft.withdrawnOn()),
                Optional.ofNullable(draft.releasedOn()),
                id);
    }

    /** Makes a release an accepted one. */
    public void accept(long id) {
        sql.run("update firmware_release set stand = 'ACCEPTED' where id = ?", id);
    }

    public long add(long lineId, MinimumDraft draft) {
        return id(
                "insert into firmware_minimum (line_id, model_id, version, identifier, note) values (?, ?::bigint, ?, ?, ?)"
                        + " returning id",
                lineId,
                Optional.ofNullable(draft.modelId()),
                draft.version(),
                draft.identifier(),
                draft.note());
    }

    public long change(long id, MinimumDraft draft) {
        return id(
                "update firmware_minimum set version = ?, identifier = ?, note = ? where id = ? returning id",
                draft.version(),
                draft.identifier(),
                draft.note(),
                id);
    }

    public long add(long lineId, ExceptionDraft draft, String author, Instant at) {
        return id(
                "insert into firmware_exception (line_id, customer_id, version, reason, last_day, made_by, made_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?) returning id",
                lineId,
                draft.customerId(),
                draft.version(),
                draft.reason(),
                draft.lastDay(),
                author,
                at);
    }

    /** Whether there is such a site. */
    public boolean addPilot(long lineId, long siteId) {
        return sql.run(
                        "insert into firmware_pilot_site (line_id, site_id) select ?, id from site where id = ?"
                                + " on conflict do nothing",
                        lineId,
                        siteId)
                > 0;
    }

    public void removePilot(long lineId, long siteId) {
        sql.run("delete from firmware_pilot_site where line_id = ? and site_id = ?", lineId, siteId);
    }

    public boolean customerThere(long id) {
        return !sql.rows("select id from customer where id = ?", row -> row.getLong(1), id)
                .isEmpty();
    }

    /**
     * Deletes a row of the policy.
     *
     * @param table one of the policy's
     */
    public void remove(String table, long id) {
        if (!TABLES.contains(table)) {
            throw new IllegalArgumentException(table);
        }
        sql.run("delete from " + table + " where id = ?", id);
    }

    private long id(String statement, Object... parameters) {
        return sql.rows(statement, row -> row.getLong(1), parameters).get(0);
    }
}
