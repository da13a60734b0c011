package org.roundsman.warranty;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/** An invented fleet in a database without a container: sites, devices with serial numbers, purchases and contracts. */
final class CoverHouse {

    private final DataSource database;

    CoverHouse(DataSource database) {
        this.database = database;
    }

    /** Runs statements as they are. */
    void tell(String... statements) {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            for (String one : statements) {
                statement.execute(one);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    void put(String sql, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Models 1 to 3: 36 months from purchase, lifetime after the end of sale, and without terms; one set of keys. */
    void models() {
        tell(
                "insert into credential (name, version, community) values ('keys', 2, '\\x01')",
                "insert into model (maker, name, kind, list_price, currency, terms_kind, terms_from, terms_months) values"
                        + " ('Tamarack Radio', 'TR-22', 'ACCESS_POINT', 189.90, 'EUR', 'MONTHS', 'PURCHASE', 36)",
                "insert into model (maker, name, kind, list_price, currency, terms_kind, terms_months, end_of_sale,"
                        + " end_of_support) values ('Tamarack Radio', 'TR-10', 'ACCESS_POINT', 99, 'USD',"
                        + " 'LIFETIME_AFTER_SALE', 60, date '2022-06-30', date '2025-06-30')",
                "insert into model (maker, name, kind) values ('Tamarack Radio', 'TR-33', 'ACCESS_POINT')");
    }

    void customer(long id, String name) {
        put("insert into customer (id, name) overriding system value values (?, ?)", id, name);
    }

    void site(long id, long customer, String name, String zone) {
        put(
                "insert into site (id, customer_id, name, time_zone) overriding system value values (?, ?, ?, ?)",
                id,
                customer,
                name,
                zone);
    }

    /** An access point whose serial number was first read on 2024-01-01; without one where that is null. */
    void device(long id, long site, String name, Long model, String serial) {
        put(
                "insert into device (id, site_id, kind, name, host, credential_id, model_id) overriding system value values"
                        + " (?, ?, 'ACCESS_POINT', ?, ?, 1, ?)",
                id,
                site,
                name,
                "192.0.2." + id % 250 + "-" + id,
                model);
        if (serial != null) {
            put(
                    "insert into device_fact (device_id, fact, value, since) values (?, 'SERIAL', ?, timestamptz"
                            + " '2024-01-01 12:00+00')",
                    id,
                    serial);
        }
    }

    void bought(long customer, String serial, String day) {
        put("insert into purchase (customer_id, serial, bought_on) values (?, ?, ?::date)", customer, serial, day);
    }

    /**
     * 20,000 access points of 40 customers at 400 sites in three time zones. One in twenty has no purchase; the others were
     * bought on days spread over five years, and every tenth is covered by a contract too.
     */
    void large() {
        models();
        tell(
                "insert into customer (name) select 'Customer ' || lpad(n::text, 3, '0') from generate_series(1, 40) n",
                "insert into site (customer_id, name, time_zone) select 1 + n % 40, 'Site ' || n, (array['Europe/Berlin',"
                        + " 'America/New_York', 'Asia/Tokyo'])[1 + n % 3] from generate_series(0, 399) n",
                "insert into device (site_id, kind, name, host, credential_id, model_id, place) select 1 + n % 400,"
                        + " 'ACCESS_POINT', 'ap-' || n, '192.0.2.1-' || n, 1, 1 + n % 3, 'Ceiling' from"
                        + " generate_series(0, 19999) n",
                "insert into device_fact (device_id, fact, value, since) select id, 'SERIAL', 'TR-' || id, timestamptz"
                        + " '2024-01-01 12:00+00' from device",
                "insert into purchase (customer_id, serial, device_id, bought_on) select s.customer_id, 'tr-' || d.id, case"
                        + " when d.id % 2 = 0 then d.id end, date '2022-01-01' + (d.id * 7 % 1800)::integer from device d"
                        + " join site s on s.id = d.site_id where d.id % 20 <> 0",
                "insert into warranty_contract (customer_id, number, begins_on, ends_on) select id, 'C-' || id, date"
                        + " '2026-01-01', date '2026-12-31' + id::integer from customer",
                "insert into contract_unit (contract_id, serial) select s.customer_id, 'TR-' || d.id from device d join site"
                        + " s on s.id = d.site_id where d.id % 10 = 1",
                "analyze");
    }
}
