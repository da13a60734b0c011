package org.roundsman.notices.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.text.Content;
import org.roundsman.notices.text.ContentJson;
import org.roundsman.notices.text.NoticeKind;
import org.roundsman.notices.thread.HourlyBound;

/** What is due of the outbox, and what is summed up. */
public final class DueTable {

    private static final int MOST = 500;

    private static final String DUE = "select * from notice_outbox w where state = 'WAITING' and due_at <= ?"
            + " and (claimed_until is null or claimed_until < ?) and not exists (select from notice_outbox e"
            + " where e.state = 'WAITING' and e.thread_id = w.thread_id and e.account_id = w.account_id"
            + " and e.channel = w.channel and e.id < w.id) order by id limit " + MOST + " for update skip locked";

    private static final String USED = "select count(*) from notice_outbox where account_id = ? and channel = ?"
            + " and kind not in ('DIGEST', 'TEST')"
            + " and (state = 'SENT' and sent_at > ? or state = 'WAITING' and claimed_until >= ?)";

    private DueTable() {}

    /** A message that is due; of one matter only the first that waits is. */
    public record Row(long accountId, String channel, HourlyBound.Due due) {}

    /** Holds what is due until the transaction ends; leaves out what others hold. */
    public static List<Row> due(Connection connection, Instant now) throws SQLException {
        return Rows.list(connection, DUE, DueTable::row, now, now);
    }

    private static Row row(ResultSet row) throws SQLException {
        boolean bounded = NoticeKind.valueOf(row.getString("kind")).bounded();
        return new Row(
                row.getLong("account_id"),
                row.getString("channel"),
                new HourlyBound.Due(
                        row.getLong("id"), Rows.sure(row, "created_at"), bounded, !row.getBoolean("maybe_sent")));
    }

    /** How many went out to that person by that channel within the last hour, or are on their way. */
    public static int used(Connection connection, long account, String channel, Instant now) throws SQLException {
        return Rows.first(connection, USED, row -> row.getInt(1), account, channel, now.minus(HourlyBound.HOUR), now)
                .orElse(0);
    }

    /** What a summary is made of. */
    public record Part(Content content, Severity severity, Instant createdAt) {}

    /** The messages to be summed up, the worst first. */
    public static List<Part> parts(Connection connection, Collection<Long> ids) throws SQLException {
        return Rows.list(
                connection,
                "select content, severity, created_at from notice_outbox where id = any(?)"
                        + " order by kind = 'CLEAR', severity desc, id",
                row -> new Part(
                        ContentJson.read(row.getString(1)),
                        Severity.ofCode(row.getInt(2)),
                        Rows.sure(row, "created_at")),
                ids);
    }

    /** They stand in that summary from now on. */
    public static void summed(Connection connection, Collection<Long> ids, long summary) throws SQLException {
        Rows.run(
                connection,
                "update notice_outbox set state = 'SUMMED', summary_id = ?, claimed_until = null where id = any(?)",
                summary,
                ids);
    }
}
