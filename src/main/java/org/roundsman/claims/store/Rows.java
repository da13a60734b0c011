package org.roundsman.claims.store;

import java.sql.Array;
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

    <T> Optional<T> one(String sql, Row<T> made, Object... parameters) {
        return list(sql, made, parameters).stream().findFirst();
    }

    long number(String sql, Object... parameters) {
        return list(sql, row -> row.getLong(1), parameters).get(0);
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
                "The database did not take a question about units, claims or spares: " + e.getMessage(), e);
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            Object value = parameters[i];
            if (value == null) {
                statement.setNull(i + 1, Types.NULL);
            } else if (value instanceof Instant at) {
                statement.setObject(i + 1, at.atOffset(ZoneOffset.UTC));
            } else if (value instanceof OptionalLong id) {
                statement.setObject(i + 1, id.isPresent() ? id.getAsLong() : null, Types.BIGINT);
            } else if (value instanceof Optional<?> maybe) {
                statement.setObject(i + 1, maybe.orElse(null));
            } else if (value instanceof List<?> texts) {
                statement.setArray(i + 1, statement.getConnection().createArrayOf("text", texts.toArray()));
            } else {
                statement.setObject(i + 1, value);
            }
        }
    }

    static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static Optional<LocalDate> day(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, LocalDate.class));
    }

    static OptionalLong id(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
    }

    static List<String> texts(ResultSet row, String column) throws SQLException {
        Array array = row.getArray(column);
        return List.of((String[]) array.getArray());
    }
}
