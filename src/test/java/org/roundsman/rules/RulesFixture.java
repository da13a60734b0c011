package org.roundsman.rules;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.demo.SetClock;
import org.roundsman.measure.Reading;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.store.BatchStore;

/** Stored readings of invented access points whose second radio is as busy as a test wants. */
public final class RulesFixture {

    public final DeskFixture desk;
    public final DataSource database;
    public final SetClock clock;
    private final BatchStore store;

    public RulesFixture(String database) {
        this.desk = new DeskFixture(database);
        this.database = desk.database;
        this.clock = desk.clock;
        this.store = new BatchStore(this.database, clock);
    }

    /** How busy a radio is at a minute. */
    public interface Busy {
        double at(int minute);
    }

    /** One reading a minute, not yet stored. */
    public static List<Reading> minutes(long device, Instant from, int count, Busy busy) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            readings.add(ReadingsFixture.answered(device, from.plus(Duration.ofMinutes(i)), 10, busy.at(i)));
        }
        return readings;
    }

    public List<Reading> store(List<Reading> readings) {
        try {
            for (int i = 0; i < readings.size(); i += 5_000) {
                store.store(readings.subList(i, Math.min(readings.size(), i + 5_000)));
            }
            return readings;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Shipped values with other ones for all. */
    public static RuleSet with(AlarmType type, java.util.Map<RuleField, String> fields) {
        return new RuleSet(List.of(override(type, RuleLevel.ALL, 0, fields)));
    }

    public static RuleOverride override(
            AlarmType type, RuleLevel level, long target, java.util.Map<RuleField, String> fields) {
        return new RuleOverride(
                0, type, level, target, level.word() + " " + target, 0, fields, "because", 1, "wren", Instant.EPOCH);
    }
}
