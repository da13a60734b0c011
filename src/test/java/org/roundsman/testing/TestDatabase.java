package org.roundsman.testing;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** One real PostgreSQL for all tests of this JVM; fsync is off, since no test here pulls the plug. */
public final class TestDatabase {

    private static EmbeddedPostgres postgres;

    private TestDatabase() {}

    private static synchronized EmbeddedPostgres postgres() {
        if (postgres == null) {
            try {
                postgres = EmbeddedPostgres.builder()
                        .setServerConfig("max_connections", "120")
                        .start();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return postgres;
    }

    /** JDBC address of the database that the container's tests share. */
    public static String url() {
        return postgres().getJdbcUrl("postgres", "postgres");
    }

    /** A fresh, migrated database of that name; an earlier one of the name is dropped. */
    public static DataSource fresh(String name) {
        try (var connection = postgres().getPostgresDatabase().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("drop database if exists " + name + " with (force)");
            statement.execute("create database " + name);
        } catch (java.sql.SQLException e) {
            throw new IllegalStateException(e);
        }
        DataSource source = postgres().getDatabase("postgres", name);
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db/migration")
                .load()
                .migrate();
        return source;
    }
}
