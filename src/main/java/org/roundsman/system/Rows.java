package org.roundsman.system;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;

/**
 * Asks and changes tables, in the transaction of this thread if there is one. Parameters may be null, moments, optional values,
 * and arrays or lists of days, numbers, ids and texts. Whatever the database refuses comes out as {@link IllegalStateException}.
 */
public final class Rows {

    private final DataSource database;
    private final String about;

    /**
     * @param about what the questions are about, for the words of a failure
     */
    public Rows(DataSource database, String about) {
        this.database = database;
        this.about = about;
    }

    /** Makes something of one row. */
    public interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    public <T> List<T> list(String sql, Row<T> made, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            List<T> all = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    all.add(made.of(row));
                }
            }
            return all;
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /** The first row, if there is one. */
    public <T> Optional<T> one(String sql, Row<T> made, Object... parameters) {
        return list(sql, made, parameters).stream().findFirst();
    }

    /** The number in the first column of the first row, which is there. */
    public long number(String sql, Object... parameters) {
        return list(sql, row -> row.getLong(1), parameters).get(0);
    }

    /** How many rows were touched. */
    public int run(String sql, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private IllegalStateException failed(SQLException e) {
        return new IllegalStateException(
                "The database did not take a question about " + about + ": " + e.getMessage(), e);
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            set(statement, i + 1, parameters[i]);
        }
    }

    private static void set(PreparedStatement statement, int place, Object value) throws SQLException {
        if (value == null) {
            statement.setNull(place, Types.NULL);
        } else if (value instanceof Instant at) {
            statement.setObject(place, at.atOffset(ZoneOffset.UTC));
        } else if (value instanceof OptionalLong id) {
            statement.setObject(place, id.isPresent() ? id.getAsLong() : null, Types.BIGINT);
        } else if (value instanceof Optional<?> maybe) {
            statement.setObject(place, maybe.orElse(null));
        } else if (value instanceof Long[] ids) {
            setArray(statement, place, "bigint", ids);
        } else if (value instanceof Integer[] numbers) {
            setArray(statement, place, "integer", numbers);
        } else if (value instanceof LocalDate[] days) {
            setArray(
                    statement,
                    place,
                    "date",
                    Arrays.stream(days).map(LocalDate::toString).toArray(String[]::new));
        } else if (value instanceof String[] texts) {
            setArray(statement, place, "text", texts);
        } else if (value instanceof List<?> texts) {
            setArray(statement, place, "text", texts.toArray());
        } else {
            statement.setObject(place, value);
        }
    }

    private static void setArray(PreparedStatement statement, int place, String type, Object[] values)
            throws SQLException {
        statement.setArray(place, statement.getConnection().createArrayOf(type, values));
    }

    public static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    public static Optional<LocalDate> day(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, LocalDate.class));
    }

    public static OptionalLong id(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
    }

    public static List<String> texts(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }
}
