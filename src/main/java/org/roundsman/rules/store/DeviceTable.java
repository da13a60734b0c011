package org.roundsman.rules.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.rules.RuleTarget;

/** Which devices there are, and where. Thread-safe. */
@ApplicationScoped
public class DeviceTable {

    private static final String SELECT =
            "select d.id, s.customer_id, d.site_id, coalesce(d.model_id, 0) model_id, d.paused, d.name, s.name site,"
                    + " c.name customer, s.time_zone from device d join site s on s.id = d.site_id"
                    + " join customer c on c.id = s.customer_id order by d.id";

    private final DataSource database;

    @Inject
    public DeviceTable(DataSource database) {
        this.database = database;
    }

    /** One device. */
    public record Watched(
            RuleTarget target, boolean paused, String name, String site, String customer, String timeZone) {}

    /** All of them by id, ascending. */
    public Map<Long, Watched> all() {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(SELECT);
                ResultSet row = statement.executeQuery()) {
            Map<Long, Watched> all = new LinkedHashMap<>();
            while (row.next()) {
                long id = row.getLong("id");
                RuleTarget target =
                        new RuleTarget(row.getLong("customer_id"), row.getLong("site_id"), row.getLong("model_id"), id);
                all.put(
                        id,
                        new Watched(
                                target,
                                row.getBoolean("paused"),
                                row.getString("name"),
                                row.getString("site"),
                                row.getString("customer"),
                                row.getString("time_zone")));
            }
            return all;
        } catch (SQLException e) {
            throw new IllegalStateException("The devices could not be read: " + e.getMessage(), e);
        }
    }
}
