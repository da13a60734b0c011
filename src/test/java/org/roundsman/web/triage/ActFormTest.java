package org.roundsman.web.triage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.InputRejected;

/** Until when somebody shelves. Berlin goes from UTC+2 to UTC+1 on 25 October 2026 at 03:00 (IANA tz database). */
class ActFormTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    @ParameterizedTest
    @CsvSource({
        "PT1H, '', 2026-11-25T12:00:00Z, 2026-11-25T13:00:00Z",
        "PT168H, '', 2026-11-25T12:00:00Z, 2026-12-02T12:00:00Z",
        "morning, '', 2026-11-25T12:00:00Z, 2026-11-26T07:00:00Z",
        "morning, '', 2026-10-24T12:00:00Z, 2026-10-25T07:00:00Z",
        "morning, '', 2026-11-25T23:30:00Z, 2026-11-27T07:00:00Z",
        "'', 2026-12-24T18:00, 2026-11-25T12:00:00Z, 2026-12-24T17:00:00Z"
    })
    void theEndIsTheSites(String length, String until, Instant now, Instant end) {
        assertThat(new ActForm("", length, until, "").end(BERLIN, now)).isEqualTo(end);
    }

    @Test
    void withoutATimeItIsRefused() {
        for (String until : new String[] {null, "", "soon", "2026-13-01T00:00"}) {
            assertThatThrownBy(() -> new ActForm("", "", until, "").end(BERLIN, Instant.EPOCH))
                    .isInstanceOf(InputRejected.class);
        }
        assertThatThrownBy(() -> new ActForm("", "PT9999H", "", "").end(BERLIN, Instant.EPOCH))
                .isInstanceOf(InputRejected.class);
    }
}
