package org.roundsman.web.triage;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.YearMonth;
import org.junit.jupiter.api.Test;
import org.roundsman.triage.MonthSoFar;

/** How a site's month is put: 100 service hours so far of 200, target 99 %, so 2 h may be lost in the whole month. */
class SurroundingsTest {

    private static MonthSoFar month(Duration silent) {
        Duration open = Duration.ofHours(100);
        return new MonthSoFar(YearMonth.of(2026, 11), 99, open, Duration.ofHours(200), open.minus(silent), silent);
    }

    @Test
    void whatIsLeftIsSaid() {
        assertThat(Surroundings.words(month(Duration.ofHours(1))))
                .isEqualTo("99\u00a0% available so far, target 99\u00a0%; the site may still be down for 1 h of its"
                        + " service hours");
    }

    @Test
    void aMissedTargetIsSaid() {
        assertThat(Surroundings.words(month(Duration.ofHours(5))))
                .isEqualTo("95\u00a0% available so far, target 99\u00a0%; the target is missed by 3 h");
    }
}
