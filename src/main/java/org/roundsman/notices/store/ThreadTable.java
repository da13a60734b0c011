package org.roundsman.notices.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.thread.NoticeThread;

/** Tables notice_thread and notice_cursor. */
public final class ThreadTable {

    private ThreadTable() {}

    /** How far changes were read; nobody else moves it, or decides what is told, until the transaction ends. */
    public static long lockCursor(Connection connection) throws SQLException {
        return Rows.first(connection, "select change_id from notice_cursor for update", row -> row.getLong(1))
                .orElseThrow();
    }

    public static void moveCursor(Connection connection, long changeId) throws SQLException {
        Rows.run(connection, "update notice_cursor set change_id = ?", changeId);
    }

    /** Those that are not over, in the order of their ids. */
    public static List<NoticeThread> open(Connection connection) throws SQLException {
        return Rows.list(connection, "select * from notice_thread where not over order by id", ThreadTable::read);
    }

    private static NoticeThread read(ResultSet row) throws SQLException {
        int told = row.getInt("told_severity");
        Optional<Severity> severity = row.wasNull() ? Optional.empty() : Optional.of(Severity.ofCode(told));
        return new NoticeThread(
                row.getLong("id"),
                row.getLong("alarm_id"),
                row.getLong("episode_id"),
                Rows.sure(row, "raised_at"),
                Rows.moment(row, "cleared_at"),
                row.getInt("cleared_times"),
                Rows.moment(row, "told_at"),
                severity,
                row.getInt("escalations"),
                Rows.moment(row, "escalated_at"),
                row.getBoolean("over"));
    }

    /** Writes those that are new or differ from what was read. */
    public static void save(Connection connection, List<NoticeThread> before, List<NoticeThread> after)
            throws SQLException {
        List<NoticeThread> changed = new ArrayList<>(after);
        changed.removeAll(before);
        for (NoticeThread thread : changed) {
            if (thread.id() == 0) {
                insert(connection, thread);
            } else {
                update(connection, thread);
            }
        }
    }

    private static void insert(Connection connection, NoticeThread thread) throws SQLException {
        Rows.run(
                connection,
                "insert into notice_thread (alarm_id, episode_id, raised_at, cleared_at, cleared_times) values (?, ?,"
                        + " ?, ?, ?)",
                thread.alarmId(),
                thread.episodeId(),
                thread.raisedAt(),
                thread.clearedAt(),
                thread.clearedTimes());
    }

    /** Writes what became of a stored one. */
    public static void update(Connection connection, NoticeThread thread) throws SQLException {
        Rows.run(
                connection,
                "update notice_thread set episode_id = ?, cleared_at = ?, cleared_times = ?, told_at = ?,"
                        + " told_severity = ?, escalations = ?, escalated_at = ?, over = ? where id = ?",
                thread.episodeId(),
                thread.clearedAt(),
                thread.clearedTimes(),
                thread.toldAt(),
                thread.toldSeverity().map(Severity::code),
                thread.escalations(),
                thread.escalatedAt(),
                thread.over(),
                thread.id());
    }

    /** Removes those that are over and of which no message is left. */
    public static int removeOld(Connection connection, Instant before) throws SQLException {
        return Rows.run(
                connection,
                "delete from notice_thread t where over and raised_at < ?"
                        + " and not exists (select from notice_outbox o where o.thread_id = t.id)",
                before);
    }
}
