package org.roundsman.rules.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.readings.Backlog;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.fold.ServiceFold;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.system.DataFolder;

class ServiceFiguresTest {

    private static final Instant NOW = Instant.parse("2026-11-25T12:00:00Z");

    @TempDir
    Path folder;

    private final SimpleMeterRegistry registry = new SimpleMeterRegistry();
    private Backlog backlog = waiting(Optional.empty(), Optional.empty());

    private static Backlog waiting(Optional<Instant> oldest, Optional<Instant> failingSince) {
        return new Backlog(0, 0, 0, failingSince, Optional.empty(), oldest);
    }

    private ServiceFigures figures() {
        return new ServiceFigures(registry, () -> backlog, DataFolder.at(folder));
    }

    @Test
    void latenessIsTheMeanOfTheRoundsSinceItWasTakenLast() {
        ServiceFigures figures = figures();
        assertThat(figures.take(NOW).get(AlarmType.POLLER_LATE))
                .as("no rounds yet")
                .isNaN();
        Timer lag = registry.timer("roundsman.rounds.lag");
        lag.record(Duration.ofSeconds(2));
        lag.record(Duration.ofSeconds(4));
        assertThat(figures.take(NOW).get(AlarmType.POLLER_LATE)).isEqualTo(3, within(0.001));
        lag.record(Duration.ofSeconds(60));
        assertThat(figures.take(NOW).get(AlarmType.POLLER_LATE)).isEqualTo(60, within(0.001));
        assertThat(figures.take(NOW).get(AlarmType.POLLER_LATE))
                .as("no round since")
                .isNaN();
    }

    @Test
    void storingIsBehindByTheOldestThatWaits() {
        ServiceFigures figures = figures();
        assertThat(figures.take(NOW).get(AlarmType.STORING_BEHIND)).isZero();
        backlog = waiting(Optional.of(NOW.minusSeconds(40)), Optional.empty());
        assertThat(figures.take(NOW).get(AlarmType.STORING_BEHIND)).isEqualTo(40);
        backlog = waiting(Optional.of(NOW.minusSeconds(40)), Optional.of(NOW.minusSeconds(90)));
        assertThat(figures.take(NOW).get(AlarmType.STORING_BEHIND)).isEqualTo(90);
    }

    @Test
    void theDiskIsFullInPerCent() {
        assertThat(figures().take(NOW).get(AlarmType.DISK_FILLING)).isBetween(0.1, 100.0);
    }

    @Test
    void theServicesOwnFiguresRaiseAndClearAlarmsOfTheService() {
        ServiceFold fold = new ServiceFold(new Tuning.Book(RuleSet.shipped()).of(RuleTarget.service()));
        List<Signal> out = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            Map<AlarmType, Double> figures = Map.of(AlarmType.DISK_FILLING, 96.0, AlarmType.POLLER_LATE, Double.NaN);
            fold.take(figures, NOW.plusSeconds(15L * i), Duration.ofSeconds(15), out);
        }
        assertThat(out).hasSize(1).first().satisfies(signal -> {
            Signal.Raise raise = (Signal.Raise) signal;
            assertThat(raise.severity()).isEqualTo(Severity.MAJOR);
            assertThat(raise.at()).isEqualTo(NOW.plusSeconds(60));
            assertThat(raise.key().resource().id()).isZero();
        });
        for (int i = 13; i <= 20; i++) {
            fold.take(Map.of(AlarmType.DISK_FILLING, 70.0), NOW.plusSeconds(15L * i), Duration.ofSeconds(15), out);
        }
        assertThat(out).hasSize(2).last().isInstanceOf(Signal.Clear.class);
    }
}
