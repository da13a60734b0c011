package org.roundsman.web.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.Cover;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.UnitCover;

/** Warranty in words. */
class CoverWordsTest {

    private static final LocalDate DAY = LocalDate.of(2026, 11, 26);

    private static String lastDay(CoverStatus status, LocalDate begins) {
        Cover cover = new Cover(status, Optional.empty(), Optional.empty(), List.of(), Optional.ofNullable(begins));
        return CoverWords.lastDay(new UnitCover(null, cover, DAY));
    }

    @Test
    void whatIsCoveredLaterIsNotNeverCovered() {
        assertThat(lastDay(CoverStatus.ENDED, null)).isEqualTo("never covered");
        assertThat(lastDay(CoverStatus.ENDED, DAY.plusDays(9))).isEqualTo("not covered yet");
        assertThat(lastDay(CoverStatus.MISSING, DAY.plusDays(9))).isEqualTo("not known");
    }

    private static String loss(int units) {
        return ContractLine.of(new Contract(1, 3, "", "C-1", "", Optional.empty(), DAY, DAY, "", units), DAY)
                .loss();
    }

    @Test
    void oneUnitLosesItsCoverAndTwoLoseIt() {
        assertThat(loss(1)).isEqualTo("1 unit loses its cover");
        assertThat(loss(2)).isEqualTo("2 units lose their cover");
    }
}
