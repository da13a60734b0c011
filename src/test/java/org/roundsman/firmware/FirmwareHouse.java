package org.roundsman.firmware;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.rules.RuleSet;

/** A database with an invented line of firmware, a model of it, and sites whose access points run it. */
public final class FirmwareHouse {

    public final DeskFixture house;
    public final FirmwareStates states;
    public final long line;
    public final long model;
    public RuleSet rules = RuleSet.shipped();

    public FirmwareHouse(String databaseName) {
        house = new DeskFixture(databaseName);
        states = new FirmwareStates(house.database, house.clock);
        line = house.fleet.id("insert into firmware_line (name) values ('Tamarack indoor') returning id");
        model = house.fleet.id(
                "insert into model (maker, name, kind, firmware_line_id) values ('Tamarack Radio', 'TR-22',"
                        + " 'ACCESS_POINT', ?) returning id",
                line);
        decide("RECOMMENDED", "6.4.2", "", null);
        decide("WITHDRAWN", "6.1.0", "it restarts under load", LocalDate.of(2026, 10, 1));
    }

    public void decide(String stand, String version, String reason, LocalDate withdrawn) {
        house.fleet.run(
                "insert into firmware_release (line_id, version, stand, reason, withdrawn_on, released_on)"
                        + " values (?, ?, ?, ?, ?, date '2026-09-01')",
                line,
                version,
                stand,
                reason,
                withdrawn);
    }

    /** An access point of the model that says it runs that version; empty for none. */
    public long accessPoint(long site, String name, String version) {
        long id = house.fleet.accessPoint(site, name);
        house.fleet.run("update device set model_id = ? where id = ?", model, id);
        if (!version.isEmpty()) {
            house.fleet.run(
                    "insert into device_fact (device_id, fact, value, since) values (?, 'FIRMWARE', ?, ?)",
                    id,
                    version,
                    DeskFixture.NOON.atOffset(ZoneOffset.UTC));
        }
        return id;
    }

    public void runs(long device, String version) {
        house.fleet.run("update device_fact set value = ? where device_id = ? and fact = 'FIRMWARE'", version, device);
    }

    public void event(long device, Instant at, String kind, String title, String old, String fresh) {
        house.fleet.run(
                "insert into device_event (device_id, at, kind, title, old_value, new_value) values (?, ?, ?, ?, ?, ?)",
                device,
                at.atOffset(ZoneOffset.UTC),
                kind,
                title,
                old,
                fresh);
    }

    /** The active alarms of withdrawn firmware. */
    public List<OpenAlarm> alarms() {
        return house.book.active().values().stream()
                .filter(alarm -> alarm.key().type() == AlarmType.FIRMWARE_WITHDRAWN)
                .toList();
    }
}
