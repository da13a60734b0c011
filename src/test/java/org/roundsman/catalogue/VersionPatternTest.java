package org.roundsman.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.catalogue.FirmwareLine.Scheme;
import org.roundsman.firmware.VersionScheme;

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

    /** Each of them has more ways through it than can be tried, and looks at no character on any. */
    @ParameterizedTest
    @CsvSource({
        "'(|)', empty choice",
        "'(||||||||||)(||||||||||)(||||||||||)(||||||||||)(||||||||||)(||||||||||)x', empty choice",
        "'(a|)', empty choice",
        "'(a||b)', empty choice",
        "'|(a)', empty choice",
        "'(a)|', empty choice",
        "'(?:|a)(b)', empty choice",
        "'(?<one>|a)', empty choice",
        "'(?i)|(a)', empty choice",
        "'(a)(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)', too many choices",
        "'()\\c[(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)(?:^|^|^|^)', too many choices",
        "'(a)^?^?^?^?^?^?^?^?^?^?', too many choices",
        "'()?()?()?()?()?()?()?()?()?()?', too many choices",
        "'()\\1?\\1?\\1?\\1?\\1?\\1?\\1?\\1?\\1?\\1?', too many choices",
        "'(?x)(a)', has comments",
        "'(?ix)(a)', has comments"
    })
    void whatHasTooManyWaysWithoutALookIsRefused(String pattern, String words) {
        assertThat(VersionPattern.fault(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains(words));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(\\d+)\\.(\\d+)(?:-(alpha|beta|rc)(\\d+)?)?",
                "(\\d+)(\\||[|]|x)",
                "([^(|]+)(a|b|c|d|e|f|g|h|i|j)?",
                "(?i)v?(\\d+)[.](\\d+)",
                "(\\d{2}){1,4}(?<rest>.*)"
            })
    void choicesThatPeopleWriteAreTaken(String pattern) {
        assertThat(VersionPattern.fault(pattern)).isEmpty();
        assertThat(VersionScheme.faultOf(pattern)).isEmpty();
    }

    /** Two rules of the scheme that reads the versions; who enters a pattern is to hear of them at once. */
    @ParameterizedTest
    @CsvSource({"'(\\d+)\\Q.\\E(\\d+)', quotes with", "'(\\d+)[](]', cannot be told apart"})
    void whatVersionsCannotBeReadByIsRefused(String pattern, String words) {
        assertThat(VersionPattern.fault(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains(words));
        assertThat(VersionScheme.faultOf(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains(words));
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
