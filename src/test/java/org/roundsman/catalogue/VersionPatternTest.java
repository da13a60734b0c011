package org.roundsman.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.catalogue.FirmwareLine.Scheme;

class VersionPatternTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(\\d+)\\.(\\d+)\\.(\\d+)",
                "v?(\\d+)(?:\\.(\\d+))?(?:\\.(\\d+))?([a-z]*)(\\d*)",
                "R(\\d{2})([AB])-(\\d{1,4})",
                "(\\d+)\\.(\\d+)\\((\\d+)\\)([A-Z]+)(\\d*)",
                "[^0-9]*(\\d+)[._-](\\d+).*",
                "(?<year>\\d{4})\\.(?<month>\\d\\d)"
            })
    void whatPeopleWriteIsTaken(String pattern) {
        assertThat(VersionPattern.fault(pattern)).isEmpty();
    }

    /** Repeats of the same characters one after the other: the number of ways grows with a high power of the length. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "(.*a){12}",
                "(\\d*)\\d*\\d*\\d*\\d*x",
                "(\\d+)*(\\d+)*(\\d+)*(\\d+)*z",
                "(.*)\\.(.*)\\.(.*)\\.(.*)\\.(.*)\\.(.*)q",
                "(a*)*\\1(a*)*\\2(a*)*b"
            })
    void whatMayTakeForEverIsRefused(String pattern) {
        assertThat(VersionPattern.fault(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains("too many ways"));
    }

    /**
     * Patterns of the kind that OWASP names in "Regular expression denial of service" (from memory). Java since release 9
     * remembers where such loops have failed; whether it does for all of them or not, they are refused or end.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {"(a+)+", "([a-zA-Z]+)*", "(a|aa)+", "(a|a?)+", "(\\d+\\.?)*x", "((\\w+\\.?)+)$", "(a+)+\\1"})
    void whatRepeatsARepeatIsRefusedOrEnds(String pattern) {
        if (VersionPattern.fault(pattern).isEmpty()) {
            assertThat(VersionPattern.of(pattern).match("a".repeat(110) + "!"))
                    .isEqualTo(new VersionPattern.NoMatch("does not fit the pattern of the line"));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'', write a regular expression",
        "'(\\d+', no regular expression",
        "'\\d+', at least one group",
        "'(?:\\d+)', at least one group",
        "'(a{1001})', counts too far",
        "'((a{50}){50})', counts too far",
        "'(){1000000000}', counts too far",
        "'(a{2,99999999999999999999})', counts too far"
    })
    void whatCannotBeTakenSaysWhy(String pattern, String words) {
        assertThat(VersionPattern.fault(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains(words));
        assertThatThrownBy(() -> VersionPattern.of(pattern)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void itMayBeSoLongAndNoLonger() {
        String longest = "(" + "a".repeat(VersionPattern.LONGEST - 2) + ")";
        assertThat(VersionPattern.fault(longest)).isEmpty();
        assertThat(VersionPattern.fault(longest + "b")).contains("at most 200 characters");
    }

    @Test
    void aVersionIsTakenApartAsAWhole() {
        VersionPattern pattern = VersionPattern.of("v?(\\d+)\\.(\\d+)(?:-(.+))?");
        assertThat(pattern.match("v6.4")).isEqualTo(new VersionPattern.Groups(List.of("6", "4", "")));
        assertThat(pattern.match("6.4-rc1")).isEqualTo(new VersionPattern.Groups(List.of("6", "4", "rc1")));
        assertThat(pattern.match("build 6.4")).isInstanceOf(VersionPattern.NoMatch.class);
        assertThat(pattern.match("6.4-" + "x".repeat(200))).isInstanceOf(VersionPattern.NoMatch.class);
    }

    /** What the probes did not find ends all the same: the pattern goes astray on a text that none of them is. */
    @Test
    void aMatchEndsWhateverThePatternIs() {
        VersionPattern pattern = VersionPattern.of("Q#*#*#*#*#*#*(x)");
        assertThat(pattern.match("Q" + "#".repeat(100)))
                .isEqualTo(new VersionPattern.NoMatch("takes the pattern of the line too long"));
    }

    @Test
    void aPatternBelongsToLinesThatAreComparedByOne() {
        assertThat(new FirmwareLineDraft("TR", Scheme.PATTERN, "(\\d+)", "").faults())
                .isEmpty();
        assertThat(new FirmwareLineDraft("TR", Scheme.SEMANTIC, "", "").faults())
                .isEmpty();
        assertThat(new FirmwareLineDraft("TR", Scheme.DOTTED, "(\\d+)", "").faults())
                .containsOnlyKeys("pattern");
        assertThat(new FirmwareLineDraft("", null, "", "").faults()).containsOnlyKeys("name", "scheme");
        assertThat(new FirmwareLineDraft("TR", Scheme.PATTERN, "", "").faults()).containsOnlyKeys("pattern");
    }
}
