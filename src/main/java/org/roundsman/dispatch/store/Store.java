package org.roundsman.dispatch.store;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.roundsman.system.Rows;
import org.roundsman.system.Transaction;

/** Questions about reports, one by one or several in one transaction. Blocks on the database; thread-safe. */
public final class Store {

    private static final String ABOUT = "reports";

    private final DataSource database;

    public Store(DataSource database) {
        this.database = database;
    }

    /** What happens within one transaction. */
    @FunctionalInterface
    public interface Work<T> {
        T on(Rows rows, Connection connection) throws SQLException;
    }

    /** Each question is a transaction of its own. */
    public Rows rows() {
        return new Rows(database, ABOUT);
    }

    /** Whole or not at all: after any exception nothing was changed, and the exception goes on. */
    public <T> T whole(Work<T> work) {
        try {
            return Transaction.run(database, connection -> work.on(new Rows(lent(connection), ABOUT), connection));
        } catch (SQLException e) {
            throw new IllegalStateException("Reports cannot be read or stored: " + e.getMessage(), e);
        }
    }

    /** Hands out that one connection, which stays open when it is handed back. */
    private static DataSource lent(Connection connection) {
        Connection open = proxy(Connection.class, (self, method, arguments) -> {
            if (method.getName().equals("close")) {
                return null;
            }
            try {
                return method.invoke(connection, arguments);
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
        return proxy(DataSource.class, (self, method, arguments) -> {
            if (method.getName().equals("getConnection")) {
                return open;
            }
            throw new UnsupportedOperationException(method.getName());
        });
    }

    private static <T> T proxy(Class<T> type, InvocationHandler handler) {
        return type.cast(Proxy.newProxyInstance(Store.class.getClassLoader(), new Class<?>[] {type}, handler));
    }
}
