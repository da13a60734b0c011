package org.roundsman.system;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;

/** Work that is stored whole or not at all. */
public final class Transaction {

    private Transaction() {}

    /** What happens within one transaction. */
    @FunctionalInterface
    public interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /**
     * Does the work on a connection of its own and commits it; after any exception it is rolled back, and the exception
     * goes on.
     *
     * @return what the work returned
     */
    public static <T> T run(DataSource source, Work<T> work) throws SQLException {
        try (Connection connection = source.getConnection()) {
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
        }
    }
}
