package org.roundsman.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PolicyFaultsTest {

    /** The 24th ends at UTC-12, the last of all zones, at noon UTC of the 25th. */
    @ParameterizedTest
    @CsvSource({
        "2026-11-25T11:59:59Z, 2026-11-24, true",
        "2026-11-25T12:00:00Z, 2026-11-24, false",
        "2026-11-25T12:00:00Z, 2026-11-25, true",
        "2026-11-25T11:59:59Z, 2026-11-23, false"
    })
    void anExceptionEndsOnNoDayThatHasEndedEverywhere(Instant now, LocalDate lastDay, boolean taken) {
        ExceptionDraft draft = new ExceptionDraft(PolicyFixture.CUSTOMER, "", "a till", lastDay);
        assertThat(new PolicyFaults(new PolicyFixture().policy(), now)
                        .of(draft, true)
                        .isEmpty())
                .isEqualTo(taken);
    }
}
