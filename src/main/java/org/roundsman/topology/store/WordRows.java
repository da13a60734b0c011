package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.roundsman.topology.PortWord;

/** What people said about places. */
public final class WordRows {

    private WordRows() {}

    /** What was said about a device. */
    public static Optional<PortWord> of(Connection connection, long deviceId) throws SQLException {
        List<PortWord> found = Jdbc.rows(
                connection,
                "select w.*, d.name as parent from wiring_word w join device d on d.id = w.parent_id"
                        + " where w.device_id = ?",
                row -> new PortWord(
                        row.getLong("device_id"),
                        row.getLong("parent_id"),
                        row.getString("parent"),
                        Jdbc.number(row, "port"),
                        row.getString("port_name"),
                        row.getString("note"),
                        row.getString("said_by"),
                        Jdbc.sure(row, "said_at")),
                deviceId);
        return found.stream().findFirst();
    }

    /** Stores it in place of what was said before. */
    public static void store(Connection connection, PortWord word) throws SQLException {
        Jdbc.run(
                connection,
                "insert into wiring_word (device_id, parent_id, port, port_name, note, said_by, said_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?) on conflict (device_id) do update set"
                        + " parent_id = excluded.parent_id, port = excluded.port, port_name = excluded.port_name,"
                        + " note = excluded.note, said_by = excluded.said_by, said_at = excluded.said_at",
                word.deviceId(),
                word.parentId(),
                word.port(),
                word.portName(),
                word.note(),
                word.saidBy(),
                word.saidAt());
    }

    /** Takes it back. */
    public static void remove(Connection connection, long deviceId) throws SQLException {
        Jdbc.run(connection, "delete from wiring_word where device_id = ?", deviceId);
    }

    /** Whether what people said leads from one device up to another. */
    public static boolean leads(Connection connection, long from, long to) throws SQLException {
        return !Jdbc.rows(
                        connection,
                        "with recursive up(id) as (select ?::bigint union"
                                + " select w.parent_id from wiring_word w join up on w.device_id = up.id)"
                                + " select id from up where id = ?",
                        row -> row.getLong(1),
                        from,
                        to)
                .isEmpty();
    }
}
