package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;

/** Something done on a connection. */
public interface Work<T> {

    T on(Connection connection) throws SQLException;

    /** Asks, in the transaction of this thread if there is one. */
    static <T> T ask(DataSource database, Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("The wiring cannot be read or stored: " + e.getMessage(), e);
        }
    }

    /** Does it whole or not at all, in a transaction of its own; this thread must be in none. */
    static <T> T whole(DataSource database, Work<T> work) {
        return ask(database, connection -> {
            connection.setAutoCommit(false);
            boolean committed = false;
            try {
                T result = work.on(connection);
                connection.commit();
                committed = true;
                return result;
            } finally {
                if (!committed && !connection.isClosed()) {
                    connection.rollback();
                }
                connection.setAutoCommit(true);
            }
        });
    }
}
