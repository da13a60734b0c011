package org.roundsman.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.testing.TestDatabase;

/** Pages of a timeline, and how long it is kept. */
class TimelineDbTest {

    private static final Instant NOW = Instant.parse("2026-11-25T08:00:00Z");

    private DataSource database;
    private Timeline timeline;
    private long device;

    @BeforeEach
    void aDevice() {
        database = TestDatabase.fresh("timeline");
        ReadingsFixture fixture = new ReadingsFixture(database);
        device = fixture.accessPoint(fixture.site(fixture.customer("Saltmarsh"), "Pier", "Europe/Berlin"), "ap-1");
        timeline = new Timeline(database);
    }

    private DeviceEvent event(EventKind kind, int daysAgo, String title) {
        return new DeviceEvent(device, NOW.minus(Duration.ofDays(daysAgo)), kind, title, "", "", "");
    }

    @Test
    void eventsComeInPagesTheNewestFirst() {
        timeline.add(IntStream.rangeClosed(1, 25)
                .mapToObj(i -> event(i % 5 == 0 ? EventKind.RESTARTED : EventKind.NOTIFICATION, i, "event " + i))
                .toList());
        assertThat(timeline.page(device, null, 1, 10).items().get(0).title()).isEqualTo("event 1");
        assertThat(timeline.page(device, null, 3, 10).items()).hasSize(5);
        assertThat(timeline.page(device, null, 99, 10).number()).isEqualTo(3);
        assertThat(timeline.page(device, EventKind.RESTARTED, 1, 10).items())
                .extracting(DeviceEvent::title)
                .containsExactly("event 5", "event 10", "event 15", "event 20", "event 25");
        assertThat(timeline.counts(device))
                .containsEntry(EventKind.RESTARTED, 5L)
                .containsEntry(EventKind.NOTIFICATION, 20L)
                .hasSize(2);
    }

    @Test
    void whatHappenedToSeveralDevicesBetweenTwoMomentsIsFound() {
        ReadingsFixture fixture = new ReadingsFixture(database);
        long site = fixture.site(fixture.customer("Brackwater"), "House", "Europe/Berlin");
        long second = fixture.accessPoint(site, "ap-2");
        long third = fixture.accessPoint(site, "ap-3");
        timeline.add(List.of(
                event(EventKind.RESTARTED, 3, "before"),
                event(EventKind.RESTARTED, 2, "first moment"),
                DeviceEvent.change(second, NOW.minus(Duration.ofHours(30)), EventKind.FACT_CHANGED, "second", "", ""),
                DeviceEvent.change(third, NOW.minus(Duration.ofHours(29)), EventKind.FACT_CHANGED, "third", "", ""),
                event(EventKind.RESTARTED, 1, "end, exclusive")));
        EventSearch search = new EventSearch(database);
        Instant from = NOW.minus(Duration.ofDays(2));
        Instant to = NOW.minus(Duration.ofDays(1));
        assertThat(search.between(List.of(device, second), from, to, 10))
                .extracting(DeviceEvent::title)
                .containsExactly("second", "first moment");
        assertThat(search.between(List.of(device, second, third), from, to, 1))
                .extracting(DeviceEvent::title)
                .containsExactly("third");
        assertThat(search.between(List.of(), from, to, 10)).isEmpty();
    }

    @Test
    void theLastOneGrowsWithEachEvent() {
        assertThat(timeline.last(device)).isZero();
        timeline.add(List.of(event(EventKind.RESTARTED, 1, "one")));
        long first = timeline.last(device);
        timeline.add(List.of(event(EventKind.RESTARTED, 300, "older, but told later")));
        assertThat(timeline.last(device)).isGreaterThan(first);
    }

    @Test
    void eventsPastTheirTimeAreDeleted() throws SQLException {
        timeline.add(List.of(
                event(EventKind.RESTARTED, 399, "kept"),
                event(EventKind.RESTARTED, 401, "deleted"),
                event(EventKind.NOTIFICATION, 1000, "deleted too")));
        OldEvents old = new OldEvents(database, Clock.fixed(NOW, ZoneOffset.UTC), 400);
        assertThat(old.delete()).isEqualTo(2);
        assertThat(timeline.latest(device, 10)).extracting(DeviceEvent::title).containsExactly("kept");
        assertThat(old.delete()).isZero();
    }
}
