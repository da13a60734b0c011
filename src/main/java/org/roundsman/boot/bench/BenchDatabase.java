package org.roundsman.boot.bench;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.security.NamePrincipal;
import io.agroal.api.security.SimplePassword;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.roundsman.demo.DemoCustomer;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.system.DatabaseAddress;

/** The database of a measurement: migrated, with the fleet's rows in it. Device ids are fleet numbers plus one. */
final class BenchDatabase {

    private BenchDatabase() {}

    static AgroalDataSource open(DatabaseAddress address) throws SQLException {
        Flyway.configure()
                .dataSource(address.url(), address.user(), address.password())
                .locations("classpath:db/migration")
                .load()
                .migrate();
        return AgroalDataSource.from(
                new AgroalDataSourceConfigurationSupplier().connectionPoolConfiguration(pool -> pool.maxSize(8)
                        .connectionFactoryConfiguration(connection -> connection
                                .jdbcUrl(address.url())
                                .principal(new NamePrincipal(address.user()))
                                .credential(new SimplePassword(address.password())))));
    }

    static void sow(AgroalDataSource source, DemoFleet fleet) throws SQLException {
        try (Connection connection = source.getConnection()) {
            try (var statement = connection.createStatement()) {
                // Rounds get their access from the fleet itself, so that this one only satisfies the device rows.
                statement.execute("insert into credential (name, version, community) values ('bench', 2, ''::bytea)");
            }
            for (DemoCustomer customer : fleet.customers()) {
                run(connection, "insert into customer (name) values (?)", customer.name());
            }
            for (DemoSite site : fleet.sites()) {
                run(
                        connection,
                        "insert into site (customer_id, name, time_zone) values (?, ?, ?)",
                        (long) site.customer() + 1,
                        site.name(),
                        site.zone().getId());
            }
            devices(connection, fleet);
        }
    }

    private static void devices(Connection connection, DemoFleet fleet) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("insert into device (id, site_id, kind, name, host, port, credential_id)"
                        + " overriding system value values (?, ?, ?, ?, ?, ?, 1)")) {
            for (DemoDevice device : fleet.devices()) {
                insert.setLong(1, device.number() + 1L);
                insert.setLong(2, device.site() + 1L);
                insert.setString(3, device.kind().name());
                insert.setString(4, device.name());
                insert.setString(5, device.host());
                insert.setInt(6, device.port());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static void run(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }
}
