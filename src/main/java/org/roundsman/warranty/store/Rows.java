package org.roundsman.warranty.store;

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
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.catalogue.WarrantyTerms.Service;

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

    int run(String sql, Object... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            fill(statement, parameters);
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /** Makes others wait who do the same for that customer, until the transaction of this thread ends. */
    void holdCustomer(long id) {
        list("select id from customer where id = ? for no key update", row -> 0, id);
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException("The database did not take a question about warranty: " + e.getMessage(), e);
    }

    private static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            Object value = parameters[i];
            if (value == null) {
                statement.setNull(i + 1, Types.NULL);
            } else if (value instanceof Instant at) {
                statement.setObject(i + 1, at.atOffset(ZoneOffset.UTC));
            } else if (value instanceof Long[] ids) {
                statement.setArray(i + 1, statement.getConnection().createArrayOf("bigint", ids));
            } else if (value instanceof String[] texts) {
                statement.setArray(i + 1, statement.getConnection().createArrayOf("text", texts));
            } else {
                statement.setObject(i + 1, value);
            }
        }
    }

    static Long[] ids(Collection<Long> ids) {
        return ids == null ? null : ids.toArray(Long[]::new);
    }

    static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static OptionalLong id(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
    }

    static Long idOrNull(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? null : id;
    }

    static LocalDate day(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }

    static Optional<Service> service(ResultSet row, String column) throws SQLException {
        String word = row.getString(column);
        return word.isEmpty() ? Optional.empty() : Optional.of(Service.valueOf(word));
    }
}
