package org.roundsman.outages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;

/**
 * Healthy devices over four simulated weeks. How many unanswered rounds there ought to be is worked out here from the loss:
 * a try is lost with 1 - (1 - p)^2, and a round with that to the power of the tries.
 */
class FalseAlarmsTest {

    private static final long SEED = 20_261;
    private static final double LOSS = 0.02;
    private static final int WEEKS = 4;
    private static final int DEVICES = QuietWeeks.SITES * (QuietWeeks.ACCESS_POINTS + 2);

    private static Map<AlarmKey, Integer> without(QuietWeeks.Tally tally, AlarmType type) {
        return tally.raised().entrySet().stream()
                .filter(entry -> entry.getKey().type() != type)
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    @Test
    void fourWeeksWithTwoInAHundredDatagramsLostRaiseNothingButTheRestartsThatWere() {
        QuietWeeks.Tally tally = QuietWeeks.run(new QuietWeeks.Plan(LOSS, WEEKS, SEED, List.of()));
        assertThat(DEVICES).isGreaterThanOrEqualTo(60);
        assertThat(tally.rounds()).isEqualTo(DEVICES * WEEKS * 7L * 24 * 60);
        double tryLost = 1 - (1 - LOSS) * (1 - LOSS);
        double roundLost = tryLost * tryLost;
        assertThat((tally.missed() - 2.0 * tally.restarts()) / tally.rounds())
                .isBetween(roundLost * 0.9, roundLost * 1.1);
        assertThat(tally.restarts()).isEqualTo(DEVICES * (long) WEEKS);
        assertThat(without(tally, AlarmType.DEVICE_RESTARTED)).isEmpty();
        assertThat(tally.raised()).hasSize(DEVICES).allSatisfy((key, times) -> assertThat(times)
                .isEqualTo(WEEKS));
        // a restart that takes two rounds, and one lost round before or after it, are three in a row: twice the chance
        // of one
        double chance = 2 * roundLost * tally.restarts();
        assertThat((double) tally.withRestart().size()).isLessThan(chance + 4 * Math.sqrt(chance));
    }

    /** Else the test above could not fail. */
    @Test
    void aRealOutageIsTold() {
        AlarmKey alone = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(305));
        QuietWeeks.Tally one =
                QuietWeeks.run(new QuietWeeks.Plan(LOSS, 1, SEED, List.of(new QuietWeeks.Planted(305, 3_000, 3_010))));
        assertThat(without(one, AlarmType.DEVICE_RESTARTED)).isEqualTo(Map.of(alone, 1));

        List<QuietWeeks.Planted> site = java.util.stream.LongStream.range(300, 300 + QuietWeeks.ACCESS_POINTS + 2)
                .mapToObj(id -> new QuietWeeks.Planted(id, 3_000, 3_010))
                .toList();
        QuietWeeks.Tally all = QuietWeeks.run(new QuietWeeks.Plan(LOSS, 1, SEED, site));
        assertThat(without(all, AlarmType.DEVICE_RESTARTED))
                .containsEntry(AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(3)), 1)
                .hasSize(1 + site.size());
    }
}
