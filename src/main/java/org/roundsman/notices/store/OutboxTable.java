package org.roundsman.notices.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.text.Content;
import org.roundsman.notices.text.ContentJson;
import org.roundsman.notices.text.NoticeKind;

/** Writing into the outbox, and what was written of a thread. */
public final class OutboxTable {

    private OutboxTable() {}

    /**
     * A message to be.
     *
     * @param threadId empty where it belongs to none
     * @param stateKey which state it tells: told once to a person by a channel
     * @param giveUp after that it is given up
     */
    public record Fresh(
            Optional<Long> threadId,
            NoticeKind kind,
            String stateKey,
            long accountId,
            String channel,
            Severity severity,
            Content content,
            Instant due,
            Instant giveUp) {}

    /** Whom something of a thread was told by which channel. */
    public record Told(long threadId, long accountId, String channel) {}

    /**
     * Adds it unless that state was told there already.
     *
     * @return its id; empty where it was
     */
    public static Optional<Long> add(Connection connection, Fresh fresh, Instant now) throws SQLException {
        return Rows.first(
                connection,
                "insert into notice_outbox (thread_id, kind, state_key, account_id, channel, severity, content,"
                        + " created_at, due_at, give_up_at) values (?, ?, ?, ?, ?, ?, ?::jsonb, ?, ?, ?) on conflict"
                        + " (thread_id, state_key, account_id, channel) do nothing returning id",
                row -> row.getLong(1),
                fresh.threadId(),
                fresh.kind().name(),
                fresh.stateKey(),
                fresh.accountId(),
                fresh.channel(),
                fresh.severity().code(),
                ContentJson.stored(fresh.content()),
                now,
                fresh.due(),
                fresh.giveUp());
    }

    /** Who was told that something of these threads is wrong. */
    public static Set<Told> told(Connection connection, Collection<Long> threads) throws SQLException {
        return new HashSet<>(Rows.list(
                connection,
                "select thread_id, account_id, channel from notice_outbox where thread_id = any(?)"
                        + " and kind in ('RAISE', 'ESCALATION')",
                row -> new Told(row.getLong(1), row.getLong(2), row.getString(3)),
                threads));
    }

    /** The same, without what was given up. */
    public static Set<Told> heard(Connection connection, long thread) throws SQLException {
        return new HashSet<>(Rows.list(
                connection,
                "select thread_id, account_id, channel from notice_outbox where thread_id = ?"
                        + " and kind in ('RAISE', 'ESCALATION') and state in ('WAITING', 'SENT', 'SUMMED')",
                row -> new Told(row.getLong(1), row.getLong(2), row.getString(3)),
                thread));
    }

    /**
     * A message on its way.
     *
     * @param key the same at each attempt
     * @param follows key of the first message about the same matter to the same person by the same channel
     * @param attempts this one included
     */
    public record Claimed(
            long id,
            UUID key,
            Optional<UUID> follows,
            NoticeKind kind,
            long accountId,
            String channel,
            Content content,
            Instant createdAt,
            Instant giveUpAt,
            int attempts) {}

    private static final String CLAIM =
            "with taken as (update notice_outbox set claimed_until = ?, attempts = attempts + 1, maybe_sent = true"
                    + " where id = any(?) returning *) select t.*, coalesce(s.message_key, f.message_key) as follows from"
                    + " taken t left join lateral (select * from notice_outbox e where e.thread_id = t.thread_id and"
                    + " e.account_id = t.account_id and e.channel = t.channel and e.id < t.id and e.state in ('SENT',"
                    + " 'SUMMED') order by e.id limit 1) f on true left join notice_outbox s on s.id = f.summary_id order"
                    + " by t.id";

    /** Takes these for an attempt that ends before that time. */
    public static List<Claimed> claim(Connection connection, Collection<Long> ids, Instant until) throws SQLException {
        return Rows.list(connection, CLAIM, OutboxTable::claimed, until, ids);
    }

    private static Claimed claimed(ResultSet row) throws SQLException {
        return new Claimed(
                row.getLong("id"),
                row.getObject("message_key", UUID.class),
                Optional.ofNullable(row.getObject("follows", UUID.class)),
                NoticeKind.valueOf(row.getString("kind")),
                row.getLong("account_id"),
                row.getString("channel"),
                ContentJson.read(row.getString("content")),
                Rows.sure(row, "created_at"),
                Rows.sure(row, "give_up_at"),
                row.getInt("attempts"));
    }

    /** It arrived. */
    public static void sent(Connection connection, long id, Instant now) throws SQLException {
        Rows.run(
                connection,
                "update notice_outbox set state = 'SENT', sent_at = ?, claimed_until = null, failure = '' where id = ?",
                now,
                id);
    }

    /**
     * An attempt failed.
     *
     * @param next when to try again; empty gives it up
     * @param uncertain whether it may have arrived
     */
    public static void failed(Connection connection, long id, String failure, Optional<Instant> next, boolean uncertain)
            throws SQLException {
        Rows.run(
                connection,
                "update notice_outbox set state = case when ?::timestamptz is null then 'DEAD' else 'WAITING' end,"
                        + " due_at = coalesce(?, due_at), claimed_until = null, failure = ?, maybe_sent = ?"
                        + " where id = ? and state = 'WAITING'",
                next,
                next,
                failure,
                uncertain,
                id);
    }

    /** Removes what was created before that and waits no more. */
    public static int removeOld(Connection connection, Instant before) throws SQLException {
        return Rows.run(
                connection,
                "delete from notice_outbox o where created_at < ? and state <> 'WAITING' and not exists"
                        + " (select from notice_outbox p where p.summary_id = o.id and p.created_at >= ?)",
                before,
                before);
    }
}
