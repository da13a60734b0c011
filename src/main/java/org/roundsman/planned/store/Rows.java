package org.roundsman.planned.store;

import java.sql.Connection;
import java.sql.Date;
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

/** Asks and changes tables, in the transaction of this thread if there is one. */
final class Rows {

    private final DataSource database;

    Rows(DataSource database) {
        this.database = database;
    }

    /** Makes something of one row. */
    interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    <T> List<T> list(String sql, Row<T> made, Object... parameters) {
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

    int run(String sql, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException(
                "The database did not take a question about planned work: " + e.getMessage(), e);
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            Object value = parameters[i];
            if (value == null) {
                statement.setNull(i + 1, Types.NULL);
            } else if (value instanceof Instant at) {
                statement.setObject(i + 1, at.atOffset(ZoneOffset.UTC));
            } else if (value instanceof LocalDate[] days) {
                String[] texts = Arrays.stream(days).map(LocalDate::toString).toArray(String[]::new);
                statement.setArray(i + 1, statement.getConnection().createArrayOf("date", texts));
            } else if (value instanceof Integer[] numbers) {
                statement.setArray(i + 1, statement.getConnection().createArrayOf("integer", numbers));
            } else {
                statement.setObject(i + 1, value);
            }
        }
    }

    static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static OptionalLong id(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
    }

    static List<LocalDate> days(ResultSet row, String column) throws SQLException {
        return Arrays.stream((Date[]) row.getArray(column).getArray())
                .map(Date::toLocalDate)
                .toList();
    }

    static List<Integer> numbers(ResultSet row, String column) throws SQLException {
        return List.of((Integer[]) row.getArray(column).getArray());
    }

    static List<String> texts(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }

    static List<Instant> instants(ResultSet row, String column) throws SQLException {
        return Arrays.stream((java.sql.Timestamp[]) row.getArray(column).getArray())
                .map(java.sql.Timestamp::toInstant)
                .toList();
    }
}
