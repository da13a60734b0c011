package org.roundsman.dispatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.roundsman.dispatch.ReportMails.Line;
import org.roundsman.dispatch.ReportMails.State;
import org.roundsman.system.Rows;

/** The outbox of reports: one mail to one recipient a row. */
public final class MailTable {

    private final Rows rows;

    public MailTable(Rows rows) {
        this.rows = rows;
    }

    /**
     * A mail on its way.
     *
     * @param key the same at each attempt
     * @param attempts this one included
     */
    public record Claimed(long id, long reportId, String to, UUID key, Instant giveUp, int attempts) {}

    /** One mail to each. */
    public void add(long reportId, List<String> recipients, Instant now, Instant giveUp) {
        rows.run(
                "insert into report_mail (report_id, recipient, made_at, due_at, give_up_at)"
                        + " select ?, t.recipient, ?, ?, ? from unnest(?) with ordinality as t(recipient, place)"
                        + " order by t.place",
                reportId,
                now,
                now,
                giveUp,
                recipients);
    }

    /** In the order in which they were made. */
    public List<Line> of(long reportId) {
        return rows.list("select * from report_mail where report_id = ? order by id", MailTable::read, reportId);
    }

    public Optional<Line> find(long id) {
        return rows.one("select * from report_mail where id = ?", MailTable::read, id);
    }

    /** Which report a mail is of. */
    public Optional<Long> report(long id) {
        return rows.one("select report_id from report_mail where id = ?", row -> row.getLong(1), id);
    }

    /** The mail of that key. */
    public Optional<Long> ofKey(UUID key) {
        return rows.one("select id from report_mail where message_key = ?", row -> row.getLong(1), key);
    }

    /** Takes the one that is due longest for an attempt that ends before that time; only of reports whose PDF is there. */
    public Optional<Claimed> claim(Instant now, Instant until) {
        return rows.one(
                "update report_mail m set claimed_until = ?, attempts = m.attempts + 1, maybe_sent = true where m.id ="
                        + " (select w.id from report_mail w join report r on r.id = w.report_id where w.state = 'WAITING'"
                        + " and w.due_at <= ? and (w.claimed_until is null or w.claimed_until < ?) and r.pdf is not null"
                        + " order by w.due_at, w.id limit 1 for update of w skip locked) returning m.*",
                row -> new Claimed(
                        row.getLong("id"),
                        row.getLong("report_id"),
                        row.getString("recipient"),
                        row.getObject("message_key", UUID.class),
                        Rows.instant(row, "give_up_at").orElseThrow(),
                        row.getInt("attempts")),
                until,
                now,
                now);
    }

    /** A server took it. */
    public void sent(long id, Instant now) {
        rows.run(
                "update report_mail set state = 'SENT', sent_at = ?, claimed_until = null, why = ''"
                        + " where id = ? and state = 'WAITING'",
                now,
                id);
    }

    /** An attempt failed and another comes. @param uncertain it may have arrived */
    public void later(long id, String why, Instant next, boolean uncertain) {
        rows.run(
                "update report_mail set due_at = ?, claimed_until = null, why = ?, maybe_sent = ?"
                        + " where id = ? and state = 'WAITING'",
                next,
                why,
                uncertain,
                id);
    }

    /** It is given up. */
    public void failed(long id, String why, boolean uncertain) {
        rows.run(
                "update report_mail set state = 'FAILED', claimed_until = null, why = ?, maybe_sent = ?"
                        + " where id = ? and state = 'WAITING'",
                why,
                uncertain,
                id);
    }

    /** All that wait of a report are given up. */
    public void failedAll(long reportId, String why) {
        rows.run(
                "update report_mail set state = 'FAILED', claimed_until = null, why = ?"
                        + " where report_id = ? and state = 'WAITING'",
                why,
                reportId);
    }

    /** It came back; whether it was one that had gone out, as far as we know. */
    public boolean bounced(long id, String why) {
        return rows.run(
                        "update report_mail set state = 'BOUNCED', claimed_until = null, why = ?"
                                + " where id = ? and state = 'SENT'",
                        why,
                        id)
                == 1;
    }

    /** One that went out is still on its way somewhere. */
    public void delayed(long id, String why) {
        rows.run("update report_mail set why = ? where id = ? and state = 'SENT'", why, id);
    }

    /** Whether any mail of a report waits or went out. */
    public boolean anyLeft(long reportId) {
        return rows.number(
                        "select count(*) from report_mail where report_id = ? and state in ('WAITING', 'SENT', 'BOUNCED')",
                        reportId)
                > 0;
    }

    private static Line read(ResultSet row) throws SQLException {
        State state = State.valueOf(row.getString("state"));
        return new Line(
                row.getLong("id"),
                row.getString("recipient"),
                state,
                row.getInt("attempts"),
                state == State.WAITING ? Rows.instant(row, "due_at") : Optional.empty(),
                Rows.instant(row, "sent_at"),
                row.getString("why"));
    }
}
