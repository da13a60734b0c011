package org.roundsman.topology.store;

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
import org.roundsman.system.StorableText;

/** A little less ceremony around statements. */
final class Jdbc {

    /** Makes one row into something. */
    interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private Jdbc() {}

    /** All rows of a question. */
    static <T> List<T> rows(Connection connection, String sql, RowReader<T> reader, Object... parameters)
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
    static int run(Connection connection, String sql, Object... parameters) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        }
    }

    /** Does the same for many rows at once. */
    static void batch(Connection connection, String sql, List<Object[]> rows) throws SQLException {
        if (rows.isEmpty()) {
            return;
        }
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (Object[] row : rows) {
                fill(statement, row);
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
        } else if (value instanceof byte[] octets) {
            statement.setBytes(place, octets);
        } else if (value instanceof OptionalInt number) {
            statement.setObject(place, number.isPresent() ? number.getAsInt() : null, java.sql.Types.INTEGER);
        } else if (value instanceof OptionalLong number) {
            statement.setObject(place, number.isPresent() ? number.getAsLong() : null, java.sql.Types.BIGINT);
        } else if (value instanceof Collection<?> list) {
            String type = list.stream().allMatch(Integer.class::isInstance) && !list.isEmpty() ? "integer" : "text";
            statement.setArray(
                    place,
                    statement
                            .getConnection()
                            .createArrayOf(type, list.stream().map(Jdbc::plain).toArray()));
        } else {
            statement.setObject(place, value);
        }
    }

    private static Object plain(Object value) {
        return value instanceof String text ? StorableText.of(text) : value;
    }

    static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static Instant sure(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    static OptionalInt number(ResultSet row, String column) throws SQLException {
        int number = row.getInt(column);
        return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(number);
    }

    static OptionalLong wide(ResultSet row, String column) throws SQLException {
        long number = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
    }

    static List<String> texts(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }
}
