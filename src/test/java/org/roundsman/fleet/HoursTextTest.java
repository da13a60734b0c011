package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HoursTextTest {

    @Test
    void neighbouringDaysWithTheSameHoursShareALine() {
        List<String> lines = List.of("Mon-Fri 08:00-12:00", "Mon-Thu 13:00-18:00", "Sat 22:00-24:00");
        assertThat(HoursText.lines(HoursText.read(String.join("\n", lines))))
                .containsExactlyInAnyOrderElementsOf(lines);
    }

    @Test
    void midnightIsTheEndOfTheDay() {
        assertThat(HoursText.read("sun 9:30 - 24:00"))
                .containsExactly(new ServiceHours(7, LocalTime.of(9, 30), LocalTime.MIDNIGHT));
    }

    @Test
    void nothingMeansAroundTheClock() {
        assertThat(HoursText.read(" \n\n")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Fri-Mon 08:00-18:00", "Day 08:00-18:00", "Mon 25:00-26:00", "Mon 08:00", "08:00-18:00"})
    void whatCannotBeReadIsNamedWithItsMend(String line) {
        assertThatThrownBy(() -> HoursText.read("Tue 08:00-09:00\n" + line))
                .hasMessageContaining(line)
                .hasMessageContaining("Mon-Fri 08:00-18:00");
    }
}
