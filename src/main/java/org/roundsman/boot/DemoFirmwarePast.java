package org.roundsman.boot;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.Fault;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.system.Transaction;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.DeviceEvents;
import org.roundsman.timeline.EventKind;

/** The past of the invented fleet's firmware: since when what runs, and the upgrades of some access points. */
final class DemoFirmwarePast {

    private static final String MAKER = "Tamarack Radio";

    /** So many upgrades are plenty to look at. */
    private static final int MOST_UPGRADES = 60;

    private static final int EVERY = 4;
    private static final String BEFORE = "6.3.1";

    private final DataSource database;

    DemoFirmwarePast(DataSource database) {
        this.database = database;
    }

    /** Where a device stands. */
    record Place(long siteId, long customerId) {}

    Optional<Place> placeOf(long device) {
        return with(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(
                    "select s.id, s.customer_id from device d join site s on s.id = d.site_id where d.id = ?")) {
                statement.setLong(1, device);
                try (ResultSet row = statement.executeQuery()) {
                    return row.next() ? Optional.of(new Place(row.getLong(1), row.getLong(2))) : Optional.empty();
                }
            }
        });
    }

    /** The lines of the invented models by id, with what they are for; a kind whose models have none gets one. */
    Map<Long, DeviceKind> lines() {
        return with(connection -> {
            for (DeviceKind kind : DeviceKind.values()) {
                ensureLine(connection, kind);
            }
            Map<Long, DeviceKind> lines = new LinkedHashMap<>();
            try (PreparedStatement statement = connection.prepareStatement("select distinct firmware_line_id, kind from"
                    + " model where maker = ? and firmware_line_id is not null order by 1")) {
                statement.setString(1, MAKER);
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        lines.putIfAbsent(row.getLong(1), DeviceKind.valueOf(row.getString(2)));
                    }
                }
            }
            return lines;
        });
    }

    private static void ensureLine(Connection connection, DeviceKind kind) throws SQLException {
        boolean without;
        try (PreparedStatement statement = connection.prepareStatement(
                "select count(*) > 0 and count(firmware_line_id) = 0 from model where maker = ? and kind = ?")) {
            statement.setString(1, MAKER);
            statement.setString(2, kind.name());
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                without = row.getBoolean(1);
            }
        }
        if (!without) {
            return;
        }
        String name = MAKER + ", firmware of each " + kind.word();
        run(
                connection,
                "insert into firmware_line (name, note) values (?, ?) on conflict do nothing",
                name,
                "Invented for demonstration");
        run(
                connection,
                "update model set firmware_line_id = (select id from firmware_line where name = ?)"
                        + " where maker = ? and kind = ? and firmware_line_id is null",
                name,
                MAKER,
                kind.name());
    }

    private static void run(Connection connection, String sql, String... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setString(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }

    /** Writes since when each device runs what its agent will tell; of devices whose firmware is known already, nothing. */
    void write(DemoSown sown) {
        with(connection -> {
            List<DeviceEvent> upgrades = new ArrayList<>();
            for (DemoDevice device : sown.fleet().devices()) {
                Long id = sown.ids().get(device.number());
                boolean told = id != null && !device.standing().contains(Fault.CREDENTIAL_WRONG);
                if (told && since(connection, id, device, sown.first()) && upgraded(device, upgrades)) {
                    upgrades.addAll(upgrade(id, device, moment(device, sown.first())));
                }
            }
            DeviceEvents.add(connection, upgrades);
            return null;
        });
    }

    private static boolean stale(DemoDevice device) {
        return device.standing().contains(Fault.FIRMWARE_STALE);
    }

    private static boolean upgraded(DemoDevice device, List<DeviceEvent> upgrades) {
        return device.isAccessPoint()
                && !stale(device)
                && device.number() % EVERY == 0
                && upgrades.size() < 2 * MOST_UPGRADES;
    }

    /** In a night 9 to 24 days ago, so that a week on either side lies in the invented past; old releases much earlier. */
    private static Instant moment(DemoDevice device, Instant first) {
        boolean lately = device.isAccessPoint() && !stale(device) && device.number() % EVERY == 0;
        int days = lately
                ? 9 + device.number() % 16
                : stale(device) ? 420 + device.number() % 60 : 26 + device.number() % 40;
        return first.truncatedTo(ChronoUnit.DAYS)
                .minus(Duration.ofDays(days))
                .plus(Duration.ofMinutes(125 + device.number() % 50));
    }

    private static boolean since(Connection connection, long id, DemoDevice device, Instant first) throws SQLException {
        String version =
                stale(device) ? device.model().staleFirmware() : device.model().currentFirmware();
        try (PreparedStatement statement =
                connection.prepareStatement("insert into device_fact (device_id, fact, value,"
                        + " since) select id, 'FIRMWARE', ?, ? from device where id = ? and not exists (select 1 from device_survey"
                        + " s where s.device_id = device.id) on conflict do nothing")) {
            statement.setString(1, version);
            statement.setObject(2, moment(device, first).atOffset(ZoneOffset.UTC));
            statement.setLong(3, id);
            return statement.executeUpdate() > 0;
        }
    }

    private static List<DeviceEvent> upgrade(long id, DemoDevice device, Instant at) {
        return List.of(
                new DeviceEvent(id, at.minusSeconds(80), EventKind.RESTARTED, "Restarted", "", "", ""),
                DeviceEvent.change(
                        id,
                        at,
                        EventKind.FACT_CHANGED,
                        "Firmware changed",
                        BEFORE,
                        device.model().currentFirmware()));
    }

    private <T> T with(Transaction.Work<T> work) {
        try {
            return Transaction.run(database, work);
        } catch (SQLException e) {
            throw new IllegalStateException("The invented firmware could not be written: " + e.getMessage(), e);
        }
    }
}
