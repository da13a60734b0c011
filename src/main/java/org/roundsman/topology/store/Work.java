package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.roundsman.system.Transaction;

/** Something done on a connection. */
public interface Work<T> {

    T on(Connection connection) throws SQLException;

    /** Asks, in the transaction of this thread if there is one. */
    static <T> T ask(DataSource database, Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(connection);
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /** Does it whole or not at all, in a transaction of its own; this thread must be in none. */
    static <T> T whole(DataSource database, Work<T> work) {
        try {
            return Transaction.run(database, work::on);
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException("The wiring cannot be read or stored: " + e.getMessage(), e);
    }
}
