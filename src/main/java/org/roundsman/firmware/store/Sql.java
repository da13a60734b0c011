package org.roundsman.firmware.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.system.StorableText;

/** Statements on a connection of their own, which joins the transaction of the thread where there is one. */
final class Sql {

    private final DataSource database;

    Sql(DataSource database) {
        this.database = database;
    }

    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    <T> List<T> rows(String sql, Reader<T> reader, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            List<T> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(reader.read(row));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("Firmware could not be looked up: " + e.getMessage(), e);
        }
    }

    /** How many rows were touched. */
    int run(String sql, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("Firmware could not be stored: " + e.getMessage(), e);
        }
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            set(statement, i + 1, plain(parameters[i]));
        }
    }

    private static Object plain(Object value) {
        if (value instanceof Optional<?> maybe) {
            return maybe.orElse(null);
        }
        if (value instanceof OptionalLong maybe) {
            return maybe.isPresent() ? maybe.getAsLong() : null;
        }
        return value;
    }

    private static void set(PreparedStatement statement, int place, Object value) throws SQLException {
        if (value instanceof String text) {
            statement.setString(place, StorableText.of(text));
        } else if (value instanceof Instant at) {
            statement.setObject(place, at.atOffset(ZoneOffset.UTC));
        } else if (value instanceof Collection<?> ids) {
            statement.setArray(place, statement.getConnection().createArrayOf("bigint", ids.toArray()));
        } else if (value == null) {
            statement.setNull(place, java.sql.Types.NULL);
        } else {
            statement.setObject(place, value);
        }
    }

    static OptionalLong number(ResultSet row, String column) throws SQLException {
        long number = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
    }

    static Optional<LocalDate> day(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, LocalDate.class));
    }

    static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static String text(ResultSet row, String column) throws SQLException {
        String text = row.getString(column);
        return text == null ? "" : text;
    }
}
