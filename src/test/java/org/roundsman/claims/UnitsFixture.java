package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.sql.DataSource;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.FactStore;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;
import org.roundsman.system.Transaction;

/** Devices that say serial numbers, as rounds store them, and models. */
@ApplicationScoped
public class UnitsFixture {

    private final DataSource database;
    private final Models models;
    private final UnitFollower follower;

    UnitsFixture(DataSource database, Models models, UnitFollower follower) {
        this.database = database;
        this.models = models;
        this.follower = follower;
    }

    /** A serial number that no other test has. */
    public static String serial() {
        return "TX-" + new Random().nextInt(1_000_000_000);
    }

    /** The device says so from then on; nothing follows from it yet. */
    public void says(long device, long site, Instant at, String serial) {
        FactStore.Said said =
                new FactStore.Said(Map.of("SERIAL", serial, "BASE_MAC", "02:00:5e:00:53:01"), List.of(), List.of());
        try {
            Transaction.run(database, connection -> {
                new FactStore().store(connection, device, site, at, said);
                return null;
            });
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What follows from what was said. */
    public void follow() {
        follower.look();
    }

    public long model(String name) {
        Model model = new Model();
        model.maker = "Tamarack Radio";
        model.name = name;
        model.kind = DeviceKind.ACCESS_POINT;
        return models.ensure(model).id;
    }
}
