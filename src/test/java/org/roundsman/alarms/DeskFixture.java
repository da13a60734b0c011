package org.roundsman.alarms;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.audit.Actor;
import org.roundsman.demo.SetClock;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.testing.TestDatabase;

/** A desk and a book over a fresh database with an invented site, for tests of this and later packages. */
public final class DeskFixture {

    public static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    public final DataSource database;
    public final SetClock clock = new SetClock(NOON.toString());
    public final AlarmDesk desk;
    public final AlarmBook book;
    public final ReadingsFixture fleet;
    public final long customer;
    public final long site;
    public final List<Set<Long>> told = new ArrayList<>();

    public DeskFixture(String databaseName) {
        database = TestDatabase.fresh(databaseName);
        fleet = new ReadingsFixture(database);
        customer = fleet.customer("Pebblegate Dental");
        site = fleet.site(customer, "Mill Lane", "Europe/London");
        Actor wren = new Actor("wren", 1L, Actor.Via.PAGE, "", "127.0.0.1");
        desk = new AlarmDesk(database, clock, () -> wren, changed -> told.add(changed.alarmIds()));
        book = new AlarmBook(database);
    }

    public long accessPoint(String name) {
        return fleet.accessPoint(site, name);
    }

    public static AlarmKey silent(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    /** Raised so many seconds after noon, when the fault began. */
    public static Signal raise(AlarmKey key, Severity severity, int seconds, String text) {
        Instant at = NOON.plusSeconds(seconds);
        return new Signal.Raise(key, severity, at, at, text);
    }

    public static Signal clear(AlarmKey key, int seconds, String text) {
        return new Signal.Clear(key, NOON.plusSeconds(seconds), text);
    }

    public void accept(Signal... signals) {
        desk.accept(List.of(signals));
    }
}
