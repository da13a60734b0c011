package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;

/** Statements of this package, in the transaction of the thread if there is one. Thread-safe. */
@ApplicationScoped
class Sql {

    private final DataSource database;

    @Inject
    Sql(DataSource database) {
        this.database = database;
    }

    /** From a row to what it means. */
    interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    <T> List<T> list(String sql, Row<T> row, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = filled(connection, sql, values);
                ResultSet result = statement.executeQuery()) {
            List<T> rows = new ArrayList<>();
            while (result.next()) {
                rows.add(row.of(result));
            }
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException("Profiles or walks could not be read: " + e.getMessage(), e);
        }
    }

    <T> Optional<T> one(String sql, Row<T> row, Object... values) {
        return list(sql, row, values).stream().findFirst();
    }

    int change(String sql, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = filled(connection, sql, values)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("Profiles or walks could not be written: " + e.getMessage(), e);
        }
    }

    private static PreparedStatement filled(Connection connection, String sql, Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            Object value = values[i];
            statement.setObject(i + 1, value instanceof Instant at ? at.atOffset(ZoneOffset.UTC) : value);
        }
        return statement;
    }

    static Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
