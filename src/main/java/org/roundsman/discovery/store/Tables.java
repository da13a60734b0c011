package org.roundsman.discovery.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.system.Transaction;

/** Asks and changes tables, in the transaction of this thread if there is one. */
@ApplicationScoped
public class Tables {

    private final DataSource database;

    @Inject
    public Tables(DataSource database) {
        this.database = database;
    }

    /** Makes something of one row. */
    public interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    /** What happens on one connection. */
    public interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** All rows of a question. */
    public <T> List<T> list(String sql, Row<T> made, Object... parameters) {
        return on(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(sql)) {
                fill(statement, parameters);
                List<T> all = new ArrayList<>();
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        all.add(made.of(row));
                    }
                }
                return all;
            }
        });
    }

    /** Runs one changing statement; returns its count of rows. */
    public int run(String sql, Object... parameters) {
        return on(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(sql)) {
                fill(statement, parameters);
                return statement.executeUpdate();
            }
        });
    }

    /** Works on a connection of the transaction of this thread, if there is one. */
    public <T> T on(Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("The database did not take a question about sweeps: " + e.getMessage(), e);
        }
    }

    /** Works in a transaction of its own; only where this thread has none. */
    <T> T whole(Work<T> work) throws SQLException {
        return Transaction.run(database, work::on);
    }

    static void fill(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            if (parameters[i] instanceof List<?> list) {
                String type = list.isEmpty() || list.get(0) instanceof Long
                        ? "bigint"
                        : list.get(0) instanceof Integer ? "integer" : "text";
                statement.setArray(i + 1, statement.getConnection().createArrayOf(type, list.toArray()));
            } else {
                statement.setObject(i + 1, parameters[i]);
            }
        }
    }

    static List<Long> longs(ResultSet row, String column) throws SQLException {
        return List.of((Long[]) row.getArray(column).getArray());
    }

    static List<Integer> integers(ResultSet row, String column) throws SQLException {
        return List.of((Integer[]) row.getArray(column).getArray());
    }

    static List<String> texts(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }
}
