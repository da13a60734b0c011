package org.roundsman.testing;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.security.NamePrincipal;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** One real PostgreSQL for all tests of this JVM; fsync is off, since no test here pulls the plug. */
public final class TestDatabase {

    private static final String OWNER = "postgres";
    private static final String MIGRATED = "migrated_template";

    /** By name of the database. */
    private static final Map<String, AgroalDataSource> POOLS = new HashMap<>();

    private static EmbeddedPostgres postgres;
    private static boolean migrated;

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
        return postgres().getJdbcUrl(OWNER, OWNER);
    }

    /**
     * A fresh, migrated database of that name; an earlier one of the name is dropped. Its connections are pooled as those of the
     * service are: to open one for each question takes the server longer than the answer.
     */
    public static synchronized DataSource fresh(String name) {
        if (!migrated) {
            migrate();
            migrated = true;
        }
        AgroalDataSource before = POOLS.remove(name);
        if (before != null) {
            before.close();
        }
        // a copy is the same, and takes a fraction of the time of all migrations
        create(name, " template " + MIGRATED);
        AgroalDataSource pool = pool(name);
        POOLS.put(name, pool);
        return pool;
    }

    private static void migrate() {
        create(MIGRATED, "");
        Flyway.configure()
                .dataSource(postgres().getDatabase(OWNER, MIGRATED))
                .locations("classpath:db/migration")
                .load()
                .migrate();
    }

    private static void create(String name, String how) {
        try (var connection = postgres().getPostgresDatabase().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("drop database if exists " + name + " with (force)");
            statement.execute("create database " + name + how);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The service's own bound of connections; who is not in use for some seconds is closed, since other tests need the room. */
    private static AgroalDataSource pool(String name) {
        try {
            return AgroalDataSource.from(
                    new AgroalDataSourceConfigurationSupplier().connectionPoolConfiguration(pool -> pool.maxSize(20)
                            .reapTimeout(Duration.ofSeconds(5))
                            .acquisitionTimeout(Duration.ofSeconds(30))
                            .connectionFactoryConfiguration(
                                    to -> to.jdbcUrl(postgres().getJdbcUrl(OWNER, name))
                                            .principal(new NamePrincipal(OWNER)))));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
