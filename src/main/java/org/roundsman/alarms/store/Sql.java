package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.system.StorableText;
import org.roundsman.system.Transaction;

/** A little less ceremony around statements. Collections become arrays: of numbers where their type says so, else of text. */
public final class Sql {

    /** Makes one row into something. */
    public interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Numbers for an array parameter. */
    public record Ids(Collection<Long> ids) {}

    /** The columns of one row to write. */
    public record Row(Object... values) {}

    private Sql() {}

    /** Asks on a connection of its own. */
    public static <T> T ask(DataSource database, Transaction.Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("Alarms could not be read: " + e.getMessage(), e);
        }
    }

    /** All rows of a question. */
    public static <T> List<T> rows(Connection connection, String sql, RowReader<T> reader, Object... parameters)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            List<T> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(reader.read(row));
                }
            }
            return found;
        }
    }

    /** Does something; gives how many rows it touched. */
    public static int run(Connection connection, String sql, Object... parameters) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        }
    }

    /** Does the same for many rows at once, in their order. */
    public static void batch(Connection connection, String sql, List<Row> rows) throws SQLException {
        if (rows.isEmpty()) {
            return;
        }
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (Row row : rows) {
                fill(statement, row.values());
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            set(statement, i + 1, parameters[i]);
        }
    }

    private static void set(PreparedStatement statement, int place, Object value) throws SQLException {
        if (value instanceof String text) {
            statement.setString(place, StorableText.of(text));
        } else if (value instanceof Instant at) {
            statement.setObject(place, at.atOffset(ZoneOffset.UTC));
        } else if (value instanceof OptionalInt number) {
            statement.setObject(place, number.isPresent() ? number.getAsInt() : null, java.sql.Types.INTEGER);
        } else if (value instanceof OptionalLong number) {
            statement.setObject(place, number.isPresent() ? number.getAsLong() : null, java.sql.Types.BIGINT);
        } else if (value instanceof Optional<?> maybe) {
            Instant at = (Instant) maybe.orElse(null);
            statement.setObject(
                    place, at == null ? null : at.atOffset(ZoneOffset.UTC), java.sql.Types.TIMESTAMP_WITH_TIMEZONE);
        } else if (value instanceof Ids ids) {
            statement.setArray(
                    place,
                    statement.getConnection().createArrayOf("bigint", ids.ids().toArray()));
        } else if (value instanceof Collection<?> list) {
            Object[] texts = list.stream()
                    .map(text -> StorableText.of(String.valueOf(text)))
                    .toArray();
            statement.setArray(place, statement.getConnection().createArrayOf("text", texts));
        } else {
            statement.setObject(place, value);
        }
    }

    public static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    public static Instant sure(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    public static OptionalInt number(ResultSet row, String column) throws SQLException {
        int number = row.getInt(column);
        return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(number);
    }

    public static OptionalLong wide(ResultSet row, String column) throws SQLException {
        long number = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
    }

    public static List<String> texts(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }
}
