package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Standing;

/** When it is we who see nothing (rule of this project, DESIGN 6). */
class BlindnessTest {

    private static final Instant NOW = Instant.parse("2026-03-10T09:44:00Z");
    private static final Duration INTERVAL = Duration.ofMinutes(1);

    private final List<DeviceLook> looks = new ArrayList<>();
    private final Map<Long, Long> siteOf = new HashMap<>();

    private void device(long site, Standing standing, int heardAgo, int misses) {
        long id = looks.size() + 1;
        Instant heard = NOW.minusSeconds(heardAgo);
        Optional<Instant> lost = standing.lost() ? Optional.of(heard.plusSeconds(60)) : Optional.empty();
        looks.add(new DeviceLook(
                id,
                "ap-" + id,
                DeviceKind.ACCESS_POINT,
                standing,
                INTERVAL,
                lost,
                Optional.of(heard),
                Optional.of(standing.lost() ? NOW : heard),
                misses,
                Optional.empty()));
        siteOf.put(id, site);
    }

    private Optional<Blindness.Blind> blind() {
        return Blindness.of(looks, siteOf);
    }

    @Test
    void threeSitesMissingWhileNothingElseWasHeardMeansUs() {
        for (long site = 1; site <= 3; site++) {
            device(site, Standing.MISSING, 130, 2);
        }
        assertThat(blind()).isPresent();
        assertThat(blind().get().sites()).isEqualTo(3);
        assertThat(blind().get().since()).isEqualTo(NOW.minusSeconds(70));
    }

    @Test
    void oneAnswerFromAnywhereMeansThatWeSee() {
        for (long site = 1; site <= 3; site++) {
            device(site, Standing.MISSING, 130, 2);
        }
        device(4, Standing.ANSWERS, 10, 0);
        assertThat(blind()).isEmpty();
    }

    @Test
    void threeLostRoundsInARowAreChance() {
        for (long site = 1; site <= 3; site++) {
            device(site, Standing.MISSING, 70, 1);
        }
        assertThat(blind()).isEmpty();
    }

    @Test
    void twoSitesAreEnoughWhenThereAreNoMoreButOneIsNot() {
        device(1, Standing.SILENT, 190, 3);
        device(2, Standing.SILENT, 190, 3);
        device(2, Standing.SILENT, 190, 3);
        assertThat(blind()).isPresent();
        siteOf.replaceAll((device, site) -> 1L);
        assertThat(blind()).isEmpty();
    }

    @Test
    void whoWasSilentLongBeforeSaysNothing() {
        for (long site = 1; site <= 5; site++) {
            device(site, Standing.SILENT, 86_400, 3);
        }
        device(6, Standing.MISSING, 70, 1);
        assertThat(blind()).isEmpty();
    }

    @Test
    void roundsThatStandStillAreNoticedAfterTwoAndAHalfIntervals() {
        for (long site = 1; site <= 3; site++) {
            device(site, Standing.UNWATCHED, 200, 0);
        }
        Instant running = NOW.minusSeconds(3_600);
        assertThat(Blindness.stalled(looks, siteOf, running, NOW)).isPresent();
        assertThat(Blindness.stalled(looks, siteOf, running, NOW.minusSeconds(51)))
                .isEmpty();
        assertThat(Blindness.stalled(looks, siteOf, NOW.minusSeconds(100), NOW))
                .as("after a start the rounds get their time")
                .isEmpty();
        device(4, Standing.ANSWERS, 20, 0);
        assertThat(Blindness.stalled(looks, siteOf, running, NOW)).isEmpty();
    }
}
