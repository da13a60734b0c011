package org.roundsman.firmware.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.firmware.FirmwareStatus.AHEAD_OF_POLICY;
import static org.roundsman.firmware.FirmwareStatus.BEHIND;
import static org.roundsman.firmware.FirmwareStatus.CURRENT;
import static org.roundsman.firmware.FirmwareStatus.EXCEPTED;
import static org.roundsman.firmware.FirmwareStatus.NOT_KNOWN;
import static org.roundsman.firmware.FirmwareStatus.WITHDRAWN;
import static org.roundsman.firmware.PolicyFixture.running;
import static org.roundsman.firmware.Release.Stand.ACCEPTED;
import static org.roundsman.firmware.Release.Stand.PILOT;
import static org.roundsman.firmware.Release.Stand.RECOMMENDED;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.firmware.FirmwarePlace;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.PolicyFixture;
import org.roundsman.firmware.Release.Stand;
import org.roundsman.firmware.Running;
import org.roundsman.fleet.DeviceKind;

/** The policy's own rules: no source. */
class JudgeTest {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private final PolicyFixture line = new PolicyFixture()
            .release(RECOMMENDED, "6.4.2")
            .release(ACCEPTED, "6.3.1")
            .release(Stand.WITHDRAWN, "5.9.13");

    private FirmwareState judge(String version) {
        return judge(version, NOON, PolicyFixture.place("Europe/Berlin"));
    }

    private FirmwareState judge(String version, Instant now, FirmwarePlace place) {
        return new Judge(List.of(line.policy()), now).judge(running(1, version, place));
    }

    @ParameterizedTest
    @CsvSource({
        "6.4.2, CURRENT, the recommended release",
        "6.04.2, CURRENT, the recommended release",
        "6.3.1, CURRENT, an accepted release",
        "6.4.1, BEHIND, 6.4.1 is older than 6.4.2",
        "6.4.2-rc1, BEHIND, 6.4.2-rc1 is older than 6.4.2",
        "6.5.0, AHEAD_OF_POLICY, 6.5.0 is newer than 6.4.2",
        "5.9.13, WITHDRAWN, 5.9.13 was withdrawn on 2026-10-01: it restarts under load",
        "custom, NOT_KNOWN, “custom” cannot be compared: it does not begin with a number",
        "'', NOT_KNOWN, no version was read"
    })
    void everyStatusHasItsReason(String version, FirmwareStatus status, String reason) {
        FirmwareState state = judge(version);
        assertThat(state.status()).isEqualTo(status);
        assertThat(state.reason()).isEqualTo(reason);
    }

    @Test
    void withoutPolicyNothingIsKnownAndItIsSaidWhatIsMissing() {
        assertThat(new Judge(List.of(), NOON).judge(running(1, "6.4.2")).reason())
                .isEqualTo("no policy: nothing is decided about Tamarack indoor");
        assertThat(judge("6.4.2", NOON, PolicyFixture.place(OptionalLong.of(1), OptionalLong.empty()))
                        .reason())
                .isEqualTo("no policy: its model has no line of firmware");
        FirmwareState unknownModel =
                judge("6.4.2", NOON, PolicyFixture.place(OptionalLong.empty(), OptionalLong.empty()));
        assertThat(unknownModel.status()).isEqualTo(NOT_KNOWN);
        assertThat(unknownModel.reason()).isEqualTo("no policy: its model is not known");
        FirmwareState nothingRecommended = new Judge(
                        List.of(new PolicyFixture().release(ACCEPTED, "6.3.1").policy()), NOON)
                .judge(running(1, "6.2"));
        assertThat(nothingRecommended.status()).isEqualTo(NOT_KNOWN);
        assertThat(nothingRecommended.reason()).contains("no release of Tamarack indoor is recommended");
    }

    @Test
    void aModelOfAnotherKindSaysNothingAboutADevice() {
        FirmwareState state = new Judge(List.of(line.policy()), NOON)
                .judge(new Running(
                        1,
                        "sw-1",
                        DeviceKind.NETWORK_SWITCH,
                        "5.9.13",
                        Optional.empty(),
                        true,
                        PolicyFixture.place("Europe/Berlin")));
        assertThat(state.status()).isEqualTo(NOT_KNOWN);
        assertThat(state.reason()).isEqualTo("its model is of another kind");
        assertThat(state.target()).isEmpty();
    }

    @Test
    void belowTheMinimumOfASecurityFixCountsAsWithdrawnAndNamesIt() {
        line.minimum("6.1.0", "TR-ADV-7", OptionalLong.empty());
        FirmwareState state = judge("6.0.9");
        assertThat(state.status()).isEqualTo(WITHDRAWN);
        assertThat(state.security()).isTrue();
        assertThat(state.reason()).isEqualTo("6.0.9 is older than 6.1.0, the minimum for TR-ADV-7");
        assertThat(judge("6.1.0").status()).isEqualTo(BEHIND);
        assertThat(judge("5.9.13").reason()).contains("was withdrawn").contains("TR-ADV-7");
        assertThat(judge("custom").status()).isEqualTo(NOT_KNOWN);
    }

    @Test
    void anAcceptedReleaseBelowALaterMinimumIsWithdrawn() {
        line.minimum("6.4.0", "TR-ADV-9", OptionalLong.empty());
        assertThat(judge("6.3.1").status()).isEqualTo(WITHDRAWN);
    }

    @Test
    void nobodyIsSentToAReleaseThatLacksASecurityFixItself() {
        line.minimum("6.4.3", "TR-ADV-11", OptionalLong.empty());
        FirmwareState state = judge("6.4.1");
        assertThat(state.status()).isEqualTo(WITHDRAWN);
        assertThat(state.target()).isEmpty();
        assertThat(state.reason())
                .isEqualTo("6.4.1 is older than 6.4.3, the minimum for TR-ADV-11; 6.4.2 lacks TR-ADV-11; decide about"
                        + " another");
        assertThat(judge("6.4.2").target()).isEmpty();
        assertThat(judge("6.5.0").status()).isEqualTo(AHEAD_OF_POLICY);
    }

    @Test
    void aModelsOwnEntryGoesBeforeItsLines() {
        OptionalLong own = OptionalLong.of(PolicyFixture.MODEL);
        line.release(RECOMMENDED, "6.3.9", own)
                .release(ACCEPTED, "5.9.13", own)
                .minimum("6.4.0", "TR-ADV-9", OptionalLong.empty())
                .minimum("1.0", "tr-adv-9", own);
        assertThat(judge("6.3.9").reason()).isEqualTo("the recommended release");
        assertThat(judge("5.9.13").status()).isEqualTo(CURRENT);
        assertThat(judge("6.3.8").reason()).isEqualTo("6.3.8 is older than 6.3.9");
        FirmwarePlace other =
                PolicyFixture.place(OptionalLong.of(PolicyFixture.OTHER_MODEL), OptionalLong.of(PolicyFixture.LINE));
        assertThat(judge("5.9.13", NOON, other).status()).isEqualTo(WITHDRAWN);
        assertThat(judge("6.3.9", NOON, other).status()).isEqualTo(WITHDRAWN);
    }

    @Test
    void whatIsWithdrawnForAModelIsNotRecommendedToIt() {
        OptionalLong own = OptionalLong.of(PolicyFixture.MODEL);
        line.release(Stand.WITHDRAWN, "6.4.2", own);
        assertThat(judge("6.4.2").status()).isEqualTo(WITHDRAWN);
        assertThat(judge("6.4.2").target()).isEmpty();
        FirmwareState older = judge("6.4.1");
        assertThat(older.status()).isEqualTo(NOT_KNOWN);
        assertThat(older.reason()).isEqualTo("the recommended release is withdrawn for this model");
        assertThat(older.target()).isEmpty();
        FirmwarePlace other =
                PolicyFixture.place(OptionalLong.of(PolicyFixture.OTHER_MODEL), OptionalLong.of(PolicyFixture.LINE));
        assertThat(judge("6.4.1", NOON, other).target()).isEqualTo("6.4.2");
        line.release(RECOMMENDED, "6.4.3", own);
        assertThat(judge("6.4.1").target()).isEqualTo("6.4.3");
    }

    @Test
    void whatIsWithdrawnForAModelIsNoPilotReleaseOfItEither() {
        line.pilot(PolicyFixture.SITE)
                .release(PILOT, "6.5.0")
                .release(Stand.WITHDRAWN, "6.5.0", OptionalLong.of(PolicyFixture.MODEL));
        assertThat(judge("6.5.0").status()).isEqualTo(WITHDRAWN);
        assertThat(judge("6.5.0").target()).isEqualTo("6.4.2");
        assertThat(judge("6.4.2").reason()).isEqualTo("the recommended release");
    }

    @Test
    void pilotSitesAreCurrentOnThePilotReleaseAndOthersAreAhead() {
        line.release(PILOT, "6.5.0");
        assertThat(judge("6.5.0").status()).isEqualTo(AHEAD_OF_POLICY);
        line.pilot(PolicyFixture.SITE);
        assertThat(judge("6.5.0").status()).isEqualTo(CURRENT);
        assertThat(judge("6.5.0").reason()).contains("pilot release");
        assertThat(judge("6.4.2").status()).isEqualTo(CURRENT);
        assertThat(judge("6.4.2").reason()).contains("6.5.0 is still to come here");
        assertThat(judge("6.6.0").status()).isEqualTo(AHEAD_OF_POLICY);
    }

    @Test
    void aWithdrawnPilotReleaseIsWithdrawnAtPilotSitesToo() {
        line.pilot(PolicyFixture.SITE).release(PILOT, "6.5.0").minimum("6.5.1", "TR-ADV-9", OptionalLong.empty());
        assertThat(judge("6.5.0").status()).isEqualTo(WITHDRAWN);
    }

    @Test
    void aPilotReleaseThatLacksASecurityFixIsLeftForTheRecommendedOne() {
        line.pilot(PolicyFixture.SITE).release(PILOT, "6.4.0").minimum("6.4.1", "TR-ADV-9", OptionalLong.empty());
        assertThat(judge("6.4.0").status()).isEqualTo(WITHDRAWN);
        assertThat(judge("6.4.0").target()).isEqualTo("6.4.2");
    }

    /** 2026-11-30 ends at 23:00 UTC in Berlin and at 05:00 UTC of the next day in New York. */
    @ParameterizedTest
    @CsvSource({
        "2026-11-30T22:59:59Z, Europe/Berlin, EXCEPTED",
        "2026-11-30T23:00:00Z, Europe/Berlin, WITHDRAWN",
        "2026-11-30T23:00:00Z, America/New_York, EXCEPTED",
        "2026-12-01T05:00:00Z, America/New_York, WITHDRAWN"
    })
    void anExceptionEndsByItselfWhenItsLastDayEndsAtTheSite(Instant now, String zone, FirmwareStatus status) {
        line.exception("5.9.13", LocalDate.of(2026, 11, 30));
        assertThat(judge("5.9.13", now, PolicyFixture.place(zone)).status()).isEqualTo(status);
    }

    @Test
    void anExceptionSaysWhyAndWhatItWouldBeWithoutIt() {
        line.exception("5.9.13", LocalDate.of(2026, 12, 31));
        assertThat(judge("5.9.13").reason())
                .isEqualTo("excepted until 2026-12-31: the till is certified with it. Without that it would be"
                        + " withdrawn: 5.9.13 was withdrawn on 2026-10-01: it restarts under load");
        assertThat(judge("5.9.12").status()).as("of one release only").isEqualTo(BEHIND);
        line.exception("", LocalDate.of(2026, 12, 31));
        assertThat(judge("5.9.12").status()).isEqualTo(EXCEPTED);
        assertThat(judge("6.4.2").status()).as("needs no exception").isEqualTo(CURRENT);
        assertThat(judge("").status()).as("nothing is known to except").isEqualTo(NOT_KNOWN);
        assertThat(judge("custom").status()).as("nor here").isEqualTo(NOT_KNOWN);
        assertThat(judge("custom").reason()).doesNotContain("excepted");
    }

    @Test
    void aReasonThatEndsWithAFullStopGetsNoSecondOne() {
        line.exception("5.9.13", LocalDate.of(2026, 12, 31), "The till.");
        assertThat(judge("5.9.13").reason())
                .startsWith("excepted until 2026-12-31: The till. Without that it would be withdrawn");
    }

    /** From the first of September to the 25th of November: 29 + 31 + 25 days. */
    @Test
    void daysBehindCountFromTheDayOnWhichTheRecommendedReleaseCameOut() {
        assertThat(judge("6.4.1").daysBehind()).hasValue(85);
        assertThat(judge("5.9.13").daysBehind()).hasValue(85);
        assertThat(judge("6.4.2").daysBehind()).isEmpty();
        assertThat(judge("6.5.0").daysBehind()).isEmpty();
        assertThat(judge("6.3.1").daysBehind()).as("accepted").isEmpty();
    }

    /** Build metadata does not count in the order: Semantic Versioning 2.0, item 10. */
    @Test
    void amongReleasesAtTheSamePlaceTheWithdrawnOneDecides() {
        PolicyFixture semantic = new PolicyFixture()
                .semantic()
                .release(RECOMMENDED, "2.2.0")
                .release(ACCEPTED, "2.1.0+a")
                .release(Stand.WITHDRAWN, "2.1.0+b");
        Judge judge = new Judge(List.of(semantic.policy()), NOON);
        assertThat(judge.judge(running(1, "2.1.0+c")).status()).isEqualTo(WITHDRAWN);
        assertThat(judge.judge(running(1, "2.1.0+a")).status())
                .as("decided about by its very text")
                .isEqualTo(CURRENT);
    }

    @Test
    void aSemanticLineNeverGuesses() {
        PolicyFixture semantic = new PolicyFixture().semantic().release(RECOMMENDED, "2.1.0");
        Judge judge = new Judge(List.of(semantic.policy()), NOON);
        assertThat(judge.judge(running(1, "2.1")).status()).isEqualTo(NOT_KNOWN);
        assertThat(judge.judge(running(1, "2.1.0+exp")).status()).isEqualTo(CURRENT);
        assertThat(judge.judge(running(1, "2.1.0-rc.1")).status()).isEqualTo(BEHIND);
    }
}
