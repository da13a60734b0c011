package org.roundsman.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.catalogue.FirmwareLine.Scheme;
import org.roundsman.firmware.Comparison.Outcome;

class VersionSchemeTest {

    private static final VersionScheme DOTTED = VersionScheme.of(Scheme.DOTTED, "");
    private static final VersionScheme SEMANTIC = VersionScheme.of(Scheme.SEMANTIC, "");

    private static Outcome compare(VersionScheme scheme, String one, String other) {
        Outcome outcome =
                VersionScheme.compare(scheme.read(one), scheme.read(other)).outcome();
        Outcome back =
                VersionScheme.compare(scheme.read(other), scheme.read(one)).outcome();
        assertThat(back)
                .isEqualTo(
                        switch (outcome) {
                            case OLDER -> Outcome.NEWER;
                            case NEWER -> Outcome.OLDER;
                            default -> outcome;
                        });
        return outcome;
    }

    /** Debian's order as dpkg --compare-versions gave it, where ours is the same. */
    @ParameterizedTest
    @CsvSource({
        "1.2.9, OLDER, 1.2.10",
        "10.0, NEWER, 9.9",
        "0.9, OLDER, 0.10",
        "2.0~rc1, OLDER, 2.0",
        "2.0~rc1, OLDER, 2.0~rc2",
        "1.0, OLDER, 1.0.0",
        "1.0, OLDER, 1.0-1",
        "7.4.1a, NEWER, 7.4.1",
        "7.4.1a, OLDER, 7.4.1b",
        "1.02, SAME, 1.2",
        "8.10.0.130, NEWER, 8.10.0.99",
        "1.0+b1, NEWER, 1.0",
        "1.2.3-4, OLDER, 1.2.3-10",
        "3.2~alpha, OLDER, 3.2",
        "6.5.28, SAME, 6.5.28"
    })
    void dottedNumbersAreOrderedAsDebianOrdersThem(String one, Outcome outcome, String other) {
        assertThat(compare(DOTTED, one, other)).isEqualTo(outcome);
    }

    /** Where ours is another: dpkg says 3.2alpha is newer than 3.2, knows epochs and takes a sign at the end. */
    @ParameterizedTest
    @CsvSource({"3.2alpha, OLDER, 3.2", "1:1.0, CANNOT_BE_COMPARED, 2.0", "1.0a, CANNOT_BE_COMPARED, 1.0+"})
    void dottedNumbersDifferFromDebianHere(String one, Outcome outcome, String other) {
        assertThat(compare(DOTTED, one, other)).isEqualTo(outcome);
    }

    /** Our own rules for suffixes (common practice, no source), each older than the next. */
    @Test
    void preReleaseWordsComeBeforeTheReleaseAndLettersAfterIt() {
        List<String> ascending = List.of(
                "6.4.1",
                "6.4.2~beta9",
                "6.4.2-dev",
                "6.4.2-snapshot3",
                "6.4.2alpha",
                "6.4.2-beta",
                "6.4.2-beta2",
                "6.4.2 BETA10",
                "6.4.2rc1",
                "6.4.2.rc2",
                "6.4.2",
                "6.4.2-1",
                "6.4.2a",
                "6.4.2b",
                "6.4.2+1",
                "6.4.2.1",
                "6.4.10",
                "6.40.0");
        for (int i = 0; i < ascending.size(); i++) {
            for (int j = 0; j < ascending.size(); j++) {
                Outcome wanted = i < j ? Outcome.OLDER : i > j ? Outcome.NEWER : Outcome.SAME;
                assertThat(compare(DOTTED, ascending.get(i), ascending.get(j)))
                        .as(ascending.get(i) + " to " + ascending.get(j))
                        .isEqualTo(wanted);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "v6.4.2, 6.4.2",
        "6.4.2-rc1, 6.4.2rc1",
        "6.4.2_RC1, 6.4.2.rc1",
        "6.4.2B, 6.4.2b",
        "6.4.2_7, 6.4.2-7",
        "6.0000000000000000000000000004, 6.4"
    })
    void whatDoesNotCountMakesNoDifference(String one, String other) {
        assertThat(compare(DOTTED, one, other)).isEqualTo(Outcome.SAME);
    }

    @Test
    void numbersMayBeOfAnyLength() {
        String long1 = "1." + "9".repeat(60);
        String long2 = "1.1" + "0".repeat(60);
        assertThat(compare(DOTTED, long1, long2)).isEqualTo(Outcome.OLDER);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "latest | does not begin with a number",
                "6.4.2 (build 7) | sign “(” is not part",
                "6..4 | must follow “.”",
                "6.4. | must follow “.”",
                "6.4/2 | sign “/”",
                "6.４ | sign “４”",
                "6.4😀 | sign “😀”"
            })
    void whatCannotBeReadSaysWhy(String text, String reason) {
        Version version = DOTTED.read(text);
        assertThat(version).isInstanceOf(Version.Unreadable.class);
        assertThat(VersionScheme.compare(version, DOTTED.read("1.0")).reason())
                .contains("“" + text + "” cannot be compared")
                .contains(reason);
        assertThat(VersionScheme.compare(version, version).possible()).isFalse();
    }

    @Test
    void partsAreThereToBeShown() {
        assertThat(parts(DOTTED, "v6.4.2-rc1"))
                .containsExactly(
                        "prefix, not compared: v",
                        "number 1: 6",
                        "number 2: 4",
                        "number 3: 2",
                        "pre-release word: rc",
                        "number 4: 1");
        assertThat(parts(SEMANTIC, "1.2.3-rc.1+a7"))
                .containsExactly(
                        "major: 1",
                        "minor: 2",
                        "patch: 3",
                        "pre-release: rc",
                        "pre-release: 1",
                        "build, not compared: a7");
    }

    private static List<String> parts(VersionScheme scheme, String text) {
        return ((Version.Read) scheme.read(text))
                .parts().stream().map(part -> part.name() + ": " + part.text()).toList();
    }

    /** Semantic Versioning 2.0.0, the examples of item 11. */
    @Test
    void semanticVersionsFollowItemEleven() {
        for (List<String> ascending : List.of(
                List.of("1.0.0", "2.0.0", "2.1.0", "2.1.1"),
                List.of(
                        "1.0.0-alpha",
                        "1.0.0-alpha.1",
                        "1.0.0-alpha.beta",
                        "1.0.0-beta",
                        "1.0.0-beta.2",
                        "1.0.0-beta.11",
                        "1.0.0-rc.1",
                        "1.0.0"),
                List.of("1.9.0", "1.10.0"))) {
            for (int i = 0; i + 1 < ascending.size(); i++) {
                assertThat(compare(SEMANTIC, ascending.get(i), ascending.get(i + 1)))
                        .isEqualTo(Outcome.OLDER);
            }
        }
        assertThat(compare(SEMANTIC, "1.0.0+a", "1.0.0+b")).isEqualTo(Outcome.SAME);
    }

    /** The same, items 2, 9 and 10: what is no version of it. */
    @ParameterizedTest
    @ValueSource(
            strings = {"v1.2", "vv1.2.3", "1.2", "01.2.3", "1.0.0-01", "1.0.0-", "1.0.0+", "1.0.0-a..b", "1.2.3.4", ""})
    void whatIsNoSemanticVersionIsNotRead(String text) {
        assertThat(SEMANTIC.read(text)).isInstanceOf(Version.Unreadable.class);
    }

    /** The same, its question about v1.2.3: no semantic version, but a common way to write that 1.2.3 is one (from memory). */
    @ParameterizedTest
    @CsvSource({
        "v1.2.3, SAME, 1.2.3",
        "V1.2.3-rc.1, SAME, 1.2.3-rc.1",
        "v1.2.3, OLDER, 1.2.4",
        "1.2.3, NEWER, v1.2.3-rc.1"
    })
    void aLetterBeforeASemanticVersionIsNoPartOfIt(String one, Outcome outcome, String other) {
        assertThat(compare(SEMANTIC, one, other)).isEqualTo(outcome);
        assertThat(SEMANTIC.read(one).text()).as("as it was written").isEqualTo(one);
    }

    /** Our own rule (no source), for patterns that know a version with the letter only, without it only, or both. */
    @ParameterizedTest
    @ValueSource(strings = {"v(\\d+)\\.(\\d+)", "(\\d+)\\.(\\d+)", "v?(\\d+)\\.(\\d+)", "V(\\d+)\\.(\\d+)"})
    void aLetterInFrontMakesNoDifferenceToAPatternEither(String pattern) {
        VersionScheme scheme = VersionScheme.of(Scheme.PATTERN, pattern);
        assertThat(compare(scheme, "v2.0", "2.0")).isEqualTo(Outcome.SAME);
        assertThat(compare(scheme, "V2.0", "v2.00")).isEqualTo(Outcome.SAME);
        assertThat(compare(scheme, "2.0", "v2.1")).isEqualTo(Outcome.OLDER);
        assertThat(compare(scheme, "w2.0", "2.0")).isEqualTo(Outcome.CANNOT_BE_COMPARED);
        assertThat(scheme.read("2.0").text()).isEqualTo("2.0");
    }

    @Test
    void aPatternComparesItsGroupsInTurn() {
        VersionScheme scheme = VersionScheme.of(Scheme.PATTERN, "R(\\d+)([A-Z]?) build (\\d+)(?:-rc(?<pre>\\d+))?");
        List<String> ascending = List.of(
                "R9 build 99",
                "R10 build 7",
                "R10A build 5",
                "R10A build 10-rc1",
                "R10A build 10-rc2",
                "R10A build 10",
                "R10B build 1");
        for (int i = 0; i + 1 < ascending.size(); i++) {
            assertThat(compare(scheme, ascending.get(i), ascending.get(i + 1)))
                    .as(ascending.get(i))
                    .isEqualTo(Outcome.OLDER);
        }
        assertThat(compare(scheme, "R010 build 07", "R10 build 7")).isEqualTo(Outcome.SAME);
        assertThat(compare(scheme, "R10 build 7", "10.7")).isEqualTo(Outcome.CANNOT_BE_COMPARED);
        assertThat(parts(scheme, "R10 build 7-rc1"))
                .containsExactly("group 1: 10", "group 2: ", "group 3: 7", "group pre: 1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "(\\d+ | cannot be read",
                "\\d+ | no group",
                "(?:\\d+)[(] | no group",
                "\\Q(\\E(\\d+) | quotes",
                "[]()](\\d+) | told apart"
            })
    void aPatternThatCannotBeUsedSaysSoAndReadsNothing(String pattern, String reason) {
        assertThat(VersionScheme.faultOf(pattern))
                .hasValueSatisfying(fault -> assertThat(fault).contains(reason));
        assertThat(VersionScheme.of(Scheme.PATTERN, pattern).read("1"))
                .isInstanceOfSatisfying(Version.Unreadable.class, version -> assertThat(version.reason())
                        .contains(reason));
    }

    /** There are about 10^18 ways in which twelve repetitions share two hundred characters. */
    @Test
    void aPatternThatWouldTakeForEverEnds() {
        VersionScheme scheme = VersionScheme.of(Scheme.PATTERN, "(.*a){12}b");
        Version version =
                assertTimeoutPreemptively(Duration.ofSeconds(5), () -> scheme.read("a".repeat(VersionScheme.LONGEST)));
        assertThat(version).isInstanceOfSatisfying(Version.Unreadable.class, one -> assertThat(one.reason())
                .contains("takes too long"));
    }

    @Test
    void aTextThatIsTooLongIsNotRead() {
        assertThat(DOTTED.read("1".repeat(201))).isInstanceOf(Version.Unreadable.class);
        assertThat(DOTTED.read("1".repeat(200))).isInstanceOf(Version.Read.class);
    }
}
