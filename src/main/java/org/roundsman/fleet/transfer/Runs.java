package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRun;
import org.roundsman.fleet.ImportRun.Source;
import org.roundsman.fleet.ImportRun.State;
import org.roundsman.fleet.TransferTable;

/** The table of imports. Each method works in the transaction of the connection it is given. */
final class Runs {

    private static final ImportRun.Progress NONE = new ImportRun.Progress("", 0, 0);

    private Runs() {}

    static long open(Connection connection, long accountId, Instant at, List<Source> files) throws SQLException {
        long id;
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into import_run (account_id, started_at, state) values (?, ?, 'CHECKING') returning id")) {
            statement.setLong(1, accountId);
            statement.setObject(2, at.atOffset(ZoneOffset.UTC));
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                id = row.getLong(1);
            }
        }
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into import_file (run_id, number, name, kind, encoding, delimiter, data_rows)"
                        + " values (?, ?, ?, ?, ?, ?, ?)")) {
            for (int i = 0; i < files.size(); i++) {
                Source file = files.get(i);
                statement.setLong(1, id);
                statement.setInt(2, i);
                statement.setString(3, file.name());
                statement.setString(4, file.table().name());
                statement.setString(5, file.encoding());
                statement.setString(6, file.delimiter());
                statement.setInt(7, file.rows());
                statement.addBatch();
            }
            statement.executeBatch();
        }
        return id;
    }

    /** Goes from one state to another; false when the import is not in the first one, or not that account's. */
    static boolean go(Connection connection, long accountId, long id, State from, State to) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "update import_run set state = ?, finished_at = null where id = ? and account_id = ? and state = ?")) {
            statement.setString(1, to.name());
            statement.setLong(2, id);
            statement.setLong(3, accountId);
            statement.setString(4, from.name());
            return statement.executeUpdate() == 1;
        }
    }

    /**
     * Notes that the work ended.
     *
     * @param moved rows that came out differently than before
     */
    static void end(Connection connection, long id, State state, String remark, Instant at, int moved)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "update import_run set state = ?, remark = ?, finished_at = ?, moved = ? where id = ?")) {
            statement.setString(1, state.name());
            statement.setString(2, remark);
            statement.setObject(3, at.atOffset(ZoneOffset.UTC));
            statement.setInt(4, moved);
            statement.setLong(5, id);
            statement.executeUpdate();
        }
    }

    static boolean remove(Connection connection, long accountId, long id) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "delete from import_run where id = ? and account_id = ? and state not in ('CHECKING', 'APPLYING')")) {
            statement.setLong(1, id);
            statement.setLong(2, accountId);
            return statement.executeUpdate() == 1;
        }
    }

    static int removeOlder(Connection connection, Instant than) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("delete from import_run where started_at < ?")) {
            statement.setObject(1, than.atOffset(ZoneOffset.UTC));
            return statement.executeUpdate();
        }
    }

    /** One import of the account, or (null) its latest ones, the newest first. */
    static List<ImportRun> find(Connection connection, long accountId, Long id, int most) throws SQLException {
        List<ImportRun> runs = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement("select * from import_run where account_id = ?"
                + " and (?::bigint is null or id = ?) order by started_at desc, id desc limit ?")) {
            statement.setLong(1, accountId);
            statement.setObject(2, id, java.sql.Types.BIGINT);
            statement.setObject(3, id, java.sql.Types.BIGINT);
            statement.setInt(4, most);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    runs.add(run(connection, row));
                }
            }
        }
        return runs;
    }

    private static ImportRun run(Connection connection, ResultSet row) throws SQLException {
        long id = row.getLong("id");
        return new ImportRun(
                id,
                row.getObject("started_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("finished_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                State.valueOf(row.getString("state")),
                row.getString("remark"),
                files(connection, id),
                counts(connection, id),
                row.getInt("moved"),
                NONE);
    }

    static List<Source> files(Connection connection, long id) throws SQLException {
        List<Source> files = new ArrayList<>();
        try (PreparedStatement statement =
                connection.prepareStatement("select * from import_file where run_id = ? order by number")) {
            statement.setLong(1, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    files.add(new Source(
                            row.getString("name"),
                            TransferTable.valueOf(row.getString("kind")),
                            row.getString("encoding"),
                            row.getString("delimiter"),
                            row.getInt("data_rows")));
                }
            }
        }
        return files;
    }

    private static Map<ImportOutcome, Integer> counts(Connection connection, long id) throws SQLException {
        Map<ImportOutcome, Integer> counts = new EnumMap<>(ImportOutcome.class);
        try (PreparedStatement statement = connection.prepareStatement(
                "select outcome, count(*) from import_row where run_id = ? group by outcome")) {
            statement.setLong(1, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    counts.put(ImportOutcome.valueOf(row.getString(1)), row.getInt(2));
                }
            }
        }
        return counts;
    }
}
