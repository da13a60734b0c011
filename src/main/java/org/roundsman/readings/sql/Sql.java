package org.roundsman.readings.sql;

import java.sql.Array;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Times, arrays and nulls between Java and PostgreSQL. */
public final class Sql {

    private Sql() {}

    public static OffsetDateTime time(long millis) {
        return time(Instant.ofEpochMilli(millis));
    }

    public static OffsetDateTime time(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    /** Milliseconds since 1970-01-01T00:00Z of a column that is never null. */
    public static long millis(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant().toEpochMilli();
    }

    public static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    public static OptionalDouble real(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    public static OptionalInt whole(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
    }

    /** A bigint[] parameter. */
    public static Array ids(Connection connection, Collection<Long> ids) throws SQLException {
        return connection.createArrayOf("bigint", ids.toArray());
    }

    /** A timestamptz[] parameter from milliseconds; null stays null. */
    public static Array times(Connection connection, Collection<Long> millis) throws SQLException {
        return connection.createArrayOf(
                "timestamptz",
                millis.stream()
                        .map(at -> at == null ? null : time(at).toString())
                        .toArray());
    }

    /**
     * Sets the parameters from the first on: instants and milliseconds are not guessed, pass {@link #time}. Null is sent
     * without a type.
     */
    public static void fill(java.sql.PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            if (parameters[i] == null) {
                statement.setNull(i + 1, Types.NULL);
            } else if (parameters[i] instanceof Array array) {
                statement.setArray(i + 1, array);
            } else {
                statement.setObject(i + 1, parameters[i]);
            }
        }
    }

    /** Runs one changing statement and returns its count of rows. */
    public static int run(Connection connection, String sql, Object... parameters) throws SQLException {
        try (var statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        }
    }

    /**
     * Has the statements of this transaction planned for their parameters: a plan for any parameters, which the server would take
     * up after some runs, does not know how long the time is that is asked for.
     */
    public static void planEachTime(Connection connection) throws SQLException {
        try (java.sql.Statement statement = connection.createStatement()) {
            statement.execute("set local plan_cache_mode = force_custom_plan");
        }
    }
}
