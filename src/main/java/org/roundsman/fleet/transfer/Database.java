package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.roundsman.system.Transaction;

/** Transactions of imports and exports. Callers are in no transaction of their own. Thread-safe. */
final class Database {

    private final DataSource source;

    Database(DataSource source) {
        this.source = source;
    }

    /** What happens within one transaction. */
    @FunctionalInterface
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** Does the work whole or not at all. */
    <T> T transaction(Work<T> work) throws SQLException {
        return Transaction.run(source, work::on);
    }

    /** Does short work; a database that fails is an exception that pages know. */
    <T> T ask(Work<T> work) {
        try {
            return transaction(work);
        } catch (SQLException e) {
            throw new IllegalStateException("The database failed: " + e.getMessage(), e);
        }
    }

    static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
