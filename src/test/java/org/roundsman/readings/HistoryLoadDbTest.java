package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.readings.ReadingsFixture.answered;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.HistoryLoad.DeviceQuarter;
import org.roundsman.readings.HistoryLoad.NetworkQuarter;
import org.roundsman.readings.HistoryLoad.PastSpan;
import org.roundsman.readings.HistoryLoad.RadioQuarter;
import org.roundsman.readings.rollup.RollUp;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.testing.TestDatabase;

class HistoryLoadDbTest {

    private static final Instant START = Instant.parse("2026-11-20T00:00:00Z");
    private static final Instant NOW = Instant.parse("2026-11-21T00:07:00Z");
    private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);

    private DataSource source;
    private ReadingsFixture fixture;
    private HistoryLoad load;
    private long site;
    private long device;

    @BeforeEach
    void database() {
        source = TestDatabase.fresh("history");
        fixture = new ReadingsFixture(source);
        load = new HistoryLoad(source, CLOCK);
        site = fixture.site(fixture.customer("Saltmarsh Ferry Line"), "South pier", "UTC");
        device = fixture.accessPoint(site, "mast");
    }

    private DeviceQuarter quarter(Instant at, int clients) {
        Values own = Values.builder(Subject.DEVICE).set(Metric.CLIENTS, clients).build();
        Values mean = Values.builder(Subject.RADIO)
                .set(Metric.RADIO_CLIENTS, clients)
                .set(Metric.UTILISATION, 30)
                .build();
        Values max = Values.builder(Subject.RADIO).set(Metric.UTILISATION, 55).build();
        Values network = Values.builder(Subject.NETWORK)
                .set(Metric.NETWORK_CLIENTS, clients)
                .build();
        return new DeviceQuarter(
                device,
                at,
                15,
                own,
                List.of(new RadioQuarter(1, mean, max)),
                List.of(new NetworkQuarter("Guest", network)));
    }

    private List<DeviceQuarter> day() {
        List<DeviceQuarter> quarters = new ArrayList<>();
        for (int i = 0; i < 96; i++) {
            quarters.add(quarter(START.plus(Duration.ofMinutes(15L * i)), i % 10));
        }
        return quarters;
    }

    private List<PastSpan> spans() {
        Instant down = START.plus(Duration.ofHours(5));
        Instant up = down.plus(Duration.ofMinutes(40));
        return List.of(
                new PastSpan(device, START, down, Condition.ANSWERING),
                new PastSpan(device, down, up, Condition.SILENT),
                new PastSpan(device, up, START.plus(Duration.ofDays(1)), Condition.ANSWERING));
    }

    private List<List<Object>> everything() {
        List<List<Object>> rows = new ArrayList<>();
        for (String table : List.of(
                "quarter_device",
                "quarter_radio",
                "quarter_network",
                "quarter_site",
                "span",
                "day_device",
                "day_radio")) {
            rows.addAll(fixture.rows("select '" + table + "', t::text from " + table + " t order by 2"));
        }
        return rows;
    }

    @Test
    void aSecondLoadOfTheSameRowsChangesNothing() {
        load.load(day(), spans());
        List<List<Object>> before = everything();
        // 96 quarters of device, radio, network (not listed twice) and site, three spans, two days
        assertThat(before).hasSize(4 * 96 + 3 + 2);
        load.load(day(), spans());
        assertThat(everything()).isEqualTo(before);
        load.load(List.of(quarter(START, 77)), List.of());
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void quartersSitesDaysAndSpansCanBeReadBack() {
        load.load(day(), spans());
        DeviceHistory history = ReadingsFixture.history(source);
        assertThat(history.ofDevice(device, Metric.CLIENTS, START, NOW, Duration.ofMinutes(15))
                        .points())
                .hasSize(96)
                .element(7)
                .isEqualTo(new Series.Point(START.plus(Duration.ofMinutes(105)), 15, 7, 7, 7));
        assertThat(history.ofRadio(device, 1, Metric.UTILISATION, START, NOW, Duration.ofDays(1))
                        .points())
                .containsExactly(new Series.Point(START, 96 * 15, 30, 30, 55));
        assertThat(history.availability(device, START, START.plus(Duration.ofDays(1)))
                        .share())
                .hasValue(1 - 40 / 1440.0);
        assertThat(fixture.rows("select answering_s, silent_s, covered_s from quarter_site"
                        + " where at = '2026-11-20 05:30+00'"))
                .containsExactly(List.of(300, 600, 900));
        assertThat(fixture.rows("select clients_n from day_device")).containsExactly(List.of(96 * 15));
    }

    @Test
    void theFirstRoundContinuesTheLastSpanAndTheRibbonShowsBoth() throws SQLException {
        load.load(day(), spans());
        new BatchStore(source, CLOCK)
                .store(List.of(
                        answered(device, Instant.parse("2026-11-21T00:01:30Z"), 4, 20),
                        answered(device, Instant.parse("2026-11-21T00:02:30Z"), 4, 20)));
        new RollUp(source, CLOCK, Duration.ofMinutes(15)).run();
        List<Span> spans = ReadingsFixture.history(source).spans(device, START, NOW);
        assertThat(spans).hasSize(3);
        assertThat(spans.get(2).from()).isEqualTo(Instant.parse("2026-11-20T05:40:00Z"));
        assertThat(spans.get(2).to()).isEmpty();
        FleetBoard board = new FleetBoard(
                source, CLOCK, () -> new Backlog(0, 0, 0, Optional.empty(), Optional.empty(), Optional.empty()));
        DeviceRow row = board.device(CustomerScope.everyone(), device).orElseThrow();
        SiteRow siteRow = board.site(CustomerScope.everyone(), site).orElseThrow();
        for (Ribbon ribbon : List.of(row.ribbon(), siteRow.ribbon())) {
            assertThat(ribbon.from()).isEqualTo(Instant.parse("2026-11-20T00:15:00Z"));
            // 05:30 is the 21st quarter hour after 00:15: 10 of its 15 minutes silent
            assertThat(ribbon.cells().get(21).silent()).isEqualTo(600 / 900.0);
            assertThat(ribbon.cells().get(21).watched()).isEqualTo(1);
            assertThat(ribbon.cells().get(94).clients()).hasValue(95 % 10);
            assertThat(ribbon.cells().get(94).utilisation()).hasValue(30);
            assertThat(ribbon.cells().get(95).clients()).hasValue(4);
            assertThat(ribbon.cells().get(95).utilisation()).hasValue(20);
        }
    }

    @Test
    void whatIsNotHistoryIsRefused() throws SQLException {
        assertThatThrownBy(() -> load.load(List.of(quarter(START.plusSeconds(1), 1)), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("not the start of a quarter hour");
        new BatchStore(source, CLOCK).store(List.of(answered(device, START.plusSeconds(1_000), 4, 20)));
        assertThatThrownBy(() -> load.load(List.of(quarter(START.plusSeconds(900), 1)), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("before the first raw reading");
        load.load(List.of(quarter(START, 1)), List.of());
        assertThatThrownBy(() -> load.load(List.of(), List.of(new PastSpan(99, START, NOW, Condition.ANSWERING))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("99");
        assertThat(fixture.count("quarter_device")).isEqualTo(1);
    }

    @Test
    void aMetricWithoutASeriesOrAnOddStepIsRefused() {
        DeviceHistory history = ReadingsFixture.history(source);
        assertThatThrownBy(() -> history.ofDevice(device, Metric.UPTIME, START, NOW, Duration.ofMinutes(15)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> history.ofDevice(device, Metric.CPU, START, NOW, Duration.ofMinutes(20)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(history.lastAnswered(device)).isEmpty();
    }
}
