package org.roundsman.notices.store;

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
import org.roundsman.system.StorableText;

/** A little less ceremony around statements. */
public final class Rows {

    /** Makes one row into something. */
    public interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private Rows() {}

    /** All rows of a question. */
    public static <T> List<T> list(Connection connection, String sql, Reader<T> reader, Object... parameters)
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

    /** The first row, if there is one. */
    public static <T> Optional<T> first(Connection connection, String sql, Reader<T> reader, Object... parameters)
            throws SQLException {
        return list(connection, sql, reader, parameters).stream().findFirst();
    }

    /** Does something; gives how many rows it touched. */
    public static int run(Connection connection, String sql, Object... parameters) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        }
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            set(statement, i + 1, parameters[i]);
        }
    }

    private static void set(PreparedStatement statement, int place, Object value) throws SQLException {
        if (value instanceof Optional<?> maybe) {
            set(statement, place, maybe.orElse(null));
        } else if (value instanceof String text) {
            statement.setString(place, StorableText.of(text));
        } else if (value instanceof Instant at) {
            statement.setObject(place, at.atOffset(ZoneOffset.UTC));
        } else if (value instanceof byte[] octets) {
            statement.setBytes(place, octets);
        } else if (value instanceof Collection<?> ids) {
            statement.setArray(place, statement.getConnection().createArrayOf("bigint", ids.toArray()));
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
}
