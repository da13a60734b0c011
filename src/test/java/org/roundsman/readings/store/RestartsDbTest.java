package org.roundsman.readings.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.testing.TestDatabase;

/** Restarts on the timeline: once each, also over a restart of our own, and never from readings that come late. */
class RestartsDbTest {

    private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");

    private DataSource database;
    private ReadingsFixture fixture;
    private long device;

    @BeforeEach
    void aDevice() {
        database = TestDatabase.fresh("restarts");
        fixture = new ReadingsFixture(database);
        device = fixture.accessPoint(fixture.site(fixture.customer("Orrin & Vale"), "Shop", "Europe/Berlin"), "ap-1");
    }

    private BatchStore store() {
        return new BatchStore(database, Clock.fixed(START, ZoneOffset.UTC));
    }

    private Reading reading(int seconds, double uptime) {
        Values values =
                Values.builder(Subject.DEVICE).set(Metric.UPTIME, uptime).build();
        return new Reading(
                device,
                START.plusSeconds(seconds),
                Outcome.ANSWERED,
                60,
                values,
                List.of(),
                List.of(),
                Optional.empty());
    }

    private List<List<Object>> events() {
        return fixture.rows("select title, old_value, new_value, at at time zone 'UTC' = '2026-11-25 08:01:40'"
                + " from device_event where kind = 'RESTARTED'");
    }

    @Test
    void aRestartIsOneEventAtTheTimeOfTheStart() throws SQLException {
        store().store(List.of(reading(0, 90_000), reading(60, 90_060), reading(120, 20), reading(180, 80)));
        assertThat(events())
                .containsExactly(
                        List.of("Restarted", "had run for 1 day 1 h", "running for 20 s when next seen", true));
    }

    @Test
    void aRestartIsSeenOverARestartOfOurOwn() throws SQLException {
        store().store(List.of(reading(0, 90_000)));
        BatchStore afterwards = store();
        afterwards.store(List.of(reading(120, 20)));
        afterwards.store(List.of(reading(180, 80)));
        assertThat(events()).hasSize(1);
    }

    @Test
    void readingsThatComeLateOrAgainFindNothing() throws SQLException {
        BatchStore store = store();
        store.store(List.of(reading(0, 90_000), reading(120, 20)));
        store.store(List.of(reading(60, 90_060)));
        store.store(List.of(reading(120, 20)));
        store.store(List.of(reading(180, 80)));
        assertThat(events()).hasSize(1);
    }
}
