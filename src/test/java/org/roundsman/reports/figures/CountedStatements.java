package org.roundsman.reports.figures;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;

/** A database that counts the statements that are prepared on its connections. */
public final class CountedStatements {

    private final AtomicInteger count = new AtomicInteger();
    private final DataSource source;

    public CountedStatements(DataSource database) {
        source = (DataSource) counting(DataSource.class, database);
    }

    public DataSource source() {
        return source;
    }

    public int count() {
        return count.get();
    }

    private Object counting(Class<?> type, Object of) {
        return Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, (self, method, arguments) -> {
            if (method.getName().equals("prepareStatement")) {
                count.incrementAndGet();
            }
            try {
                Object result = method.invoke(of, arguments);
                return method.getName().equals("getConnection") ? counting(Connection.class, result) : result;
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
    }
}
