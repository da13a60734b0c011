package org.roundsman.traps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.roundsman.timeline.DeviceEvent;

/** How many notifications of a device become events: our own rule, see {@link Allowances}. */
class AllowancesTest {

    private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");

    private static final NoticeTitle LINK_DOWN =
            new NoticeTitle("Link down: interface 10013", "Link down", OptionalInt.of(10_013));

    private final Allowances allowances = new Allowances(30, Duration.ofSeconds(10), Duration.ofMinutes(10));

    private List<DeviceEvent> events(Instant at, boolean all) {
        return allowances.sums(at, all).stream()
                .map(NoticeWriter.Waiting::event)
                .toList();
    }

    private int admitted(int notifications, Instant at) {
        int admitted = 0;
        for (int i = 0; i < notifications; i++) {
            admitted += allowances.admits(1, LINK_DOWN, at) ? 1 : 0;
        }
        return admitted;
    }

    @Test
    void someAtOnceThenOneNowAndThen() {
        assertThat(admitted(100, START)).isEqualTo(30);
        assertThat(admitted(100, START.plusSeconds(9))).isZero();
        assertThat(admitted(100, START.plusSeconds(10))).isEqualTo(1);
        assertThat(admitted(100, START.plusSeconds(60))).isEqualTo(5);
        assertThat(admitted(100, START.plusSeconds(3_600))).isEqualTo(30);
    }

    @Test
    void whatIsBeyondBecomesOneEventAfterAWhile() {
        admitted(1_264, START);
        assertThat(allowances.sums(START.plusSeconds(599), false)).isEmpty();
        List<DeviceEvent> sums = events(START.plusSeconds(600), false);
        assertThat(sums).extracting(DeviceEvent::title).containsExactly("1,234 more notifications in 10 minutes");
        assertThat(allowances.sums(START.plusSeconds(1_200), true)).isEmpty();
    }

    @Test
    void theLastOfASumIsToldByThePortsNameToo() {
        admitted(31, START);
        assertThat(allowances.sums(START.plusSeconds(600), false))
                .singleElement()
                .satisfies(sum -> {
                    assertThat(sum.event().detail()).endsWith("Link down: interface 10013");
                    DeviceEvent named = sum.with(Map.of(10_013, "port 13 (garden-ap-09)"));
                    assertThat(named.title()).isEqualTo("1 more notification in 10 minutes");
                    assertThat(named.detail()).isEqualTo("The last of them: Link down: port 13 (garden-ap-09)");
                });
    }

    @Test
    void atTheEndSumsDoNotGetLost() {
        admitted(31, START);
        assertThat(events(START.plusSeconds(1), true))
                .extracting(DeviceEvent::title)
                .containsExactly("1 more notification in 1 minute");
    }

    @Test
    void devicesDoNotShareTheirAllowance() {
        admitted(100, START);
        assertThat(allowances.admits(2, LINK_DOWN, START)).isTrue();
    }

    @Test
    void aClockThatIsSetBackTakesNothingAway() {
        admitted(10, START);
        assertThat(admitted(100, START.minusSeconds(86_400))).isEqualTo(20);
    }
}
