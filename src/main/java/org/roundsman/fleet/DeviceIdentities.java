package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;

/**
 * Looks devices up by what they say about themselves, to recognise one that moved. Looks over all customers, since what
 * two customers' devices share proves nothing: who asks never shows one customer's devices to another.
 */
@ApplicationScoped
public class DeviceIdentities {

    private static final String LIKE = """
            with alike as (
                select device_id from device_fact
                 where fact in ('SERIAL', 'BASE_MAC', 'ENGINE_ID') and upper(btrim(value)) = any (?)
                union select device_id from radio where mac <> '' and mac = any (?)
                union select id from device where site_id = ?)
            select d.id, d.site_id, s.customer_id, s.name as site, d.name, d.host, d.port,
                   array(select array[f.fact, f.value] from device_fact f where f.device_id = d.id
                          and f.fact in ('SERIAL', 'MAKER', 'BASE_MAC', 'ENGINE_ID')) as facts,
                   array(select r.mac from radio r where r.device_id = d.id and r.mac <> '') as macs
              from device d join site s on s.id = d.site_id
             where d.id in (select device_id from alike)
             order by d.id""";

    private final DataSource database;

    @Inject
    DeviceIdentities(DataSource database) {
        this.database = database;
    }

    /**
     * What is stored of one device that tells it from others.
     *
     * @param facts by name: SERIAL, MAKER, BASE_MAC, ENGINE_ID as far as the device said them
     * @param radioMacs addresses of its radios, in lower case
     */
    public record Stored(
            long deviceId,
            long siteId,
            long customerId,
            String site,
            String name,
            String host,
            int port,
            Map<String, String> facts,
            List<String> radioMacs) {}

    /** The devices of a site, and every device that shares one of these values. */
    public List<Stored> like(long siteId, Collection<String> values, Collection<String> radioMacs) {
        Object[] wanted =
                values.stream().map(v -> v.strip().toUpperCase(Locale.ROOT)).toArray();
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(LIKE)) {
            statement.setArray(1, connection.createArrayOf("text", wanted));
            statement.setArray(2, connection.createArrayOf("text", radioMacs.toArray()));
            statement.setLong(3, siteId);
            List<Stored> all = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    all.add(stored(row));
                }
            }
            return all;
        } catch (SQLException e) {
            throw new IllegalStateException("Devices could not be looked up: " + e.getMessage(), e);
        }
    }

    private static Stored stored(ResultSet row) throws SQLException {
        Map<String, String> facts = new TreeMap<>();
        if (row.getArray("facts").getArray() instanceof String[][] pairs) {
            for (String[] pair : pairs) {
                facts.put(pair[0], pair[1]);
            }
        }
        return new Stored(
                row.getLong("id"),
                row.getLong("site_id"),
                row.getLong("customer_id"),
                row.getString("site"),
                row.getString("name"),
                row.getString("host"),
                row.getInt("port"),
                facts,
                List.of((String[]) row.getArray("macs").getArray()));
    }
}
