package org.roundsman.triage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.triage.Place.silence;
import static org.roundsman.triage.Place.uplink;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;
import org.roundsman.topology.PortState;
import org.roundsman.topology.PowerState;

/** Lost sites, gateways and switches: the highest lost element is the cause (project rule, DESIGN 6). */
class CauseFinderTest {

    /** gw-1 – port 3 – sw-2 – ports 1 to 4 – ap-11 to ap-14. */
    private static Place small() {
        return new Place().gateway(1).bridge(2).hangs(2, 1, 3).points(11, 14, 2);
    }

    @Test
    void aHealthySiteGivesNoFinding() {
        assertThat(small().findings()).isEmpty();
    }

    @Test
    void aMissedRoundIsNoFindingYet() {
        assertThat(small().missing(11, 2, "10:42:50").findings()).isEmpty();
    }

    @Test
    void aLostUplinkExplainsEverythingBehindIt() {
        Place place = small().silent(1, "10:41:12").silent(2, "10:41:20").silent(11, 14, "10:41:30");
        Finding cause = place.cause();
        assertThat(cause.key()).isEqualTo(uplink());
        assertThat(cause.cause()).isEqualTo(CauseKind.UPLINK_LOST);
        assertThat(cause.evidence())
                .containsExactly(
                        "Gateway gw-1 last answered at 10:40:12.",
                        "1 of 1 switch silent since 10:41.",
                        "4 of 4 access points silent since 10:41.",
                        "From outside, a lost line, a dead gateway and a power cut at the site look the same.");
        assertThat(cause.affected()).containsExactlyInAnyOrder(1L, 2L, 11L, 12L, 13L, 14L);
        assertThat(cause.settled()).isTrue();
        assertThat(cause.sureness()).isEqualTo(Sureness.SURE);
        assertThat(Finding.pointingTo(uplink(), place.findings())).hasSize(6);
        assertThat(place.finding(11).evidence())
                .containsExactly(
                        "Access point ap-11 last answered at 10:40:30.",
                        "Nothing at the site answers: its line or gateway explains it.");
    }

    @Test
    void theUplinkIsFoundAsSoonAsTheFirstDeviceIsSilentWhenAllOthersMiss() {
        Place place = small().silent(11, "10:41:02")
                .missing(1, 2, "10:41:30")
                .missing(2, 2, "10:41:40")
                .missing(12, 2, "10:41:10")
                .missing(13, 2, "10:41:20")
                .missing(14, 2, "10:41:50");
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(place.cause().evidence())
                .contains(
                        "1 of 1 switch silent or missing rounds since 10:41.",
                        "4 of 4 access points silent or missing rounds since 10:41.");
        assertThat(place.findings()).hasSize(2);
    }

    @Test
    void withoutAGatewayAllDevicesSilentTogetherMeanTheUplink() {
        Place place = new Place().point(11).point(12).point(13).silent(11, 13, "10:41:00");
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(place.cause().sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(place.cause().evidence())
                .startsWith(
                        "No gateway of the site tells more: the line is concluded from all devices falling silent.");
    }

    @Test
    void whoWasSilentLongBeforeIsACauseOfItsOwnWhenTheUplinkIsLost() {
        Place place = small().silent(1, "10:41:12")
                .silent(2, "10:41:20")
                .silent(11, 13, "10:41:30")
                .silent(14, "08:12:00");
        assertThat(place.finding(uplink()).evidence())
                .contains(
                        "3 of 4 access points silent since 10:41.",
                        "Silent before, for another reason: ap-14 (since 08:12).");
        assertThat(place.finding(14).causedBy()).isEmpty();
        assertThat(place.finding(14).cause()).isNotEqualTo(CauseKind.UPLINK_LOST);
    }

    @Test
    void whoMissedARoundByChanceJustBeforeStillBelongsToTheUplink() {
        Place place = small().silent(1, "10:41:12")
                .silent(2, "10:41:20")
                .silent(11, 13, "10:41:30")
                .silent(14, "10:40:25");
        assertThat(place.cause().affected()).contains(14L);
    }

    @Test
    void aPausedDeviceIsNoEvidence() {
        Place place = small().silent(1, "10:41:12")
                .silent(2, "10:41:20")
                .silent(11, 13, "10:41:30")
                .unwatched(14);
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(place.cause().evidence())
                .contains("3 of 3 access points silent since 10:41.")
                .contains("One device of the site is paused or not watched and says nothing.");
        assertThat(place.cause().affected()).doesNotContain(14L);
    }

    @Test
    void aDeviceThatIsAskedSeldomDoesNotHoldTheUplinkBackButKeepsItUnsettled() {
        Place place = small().silent(1, "10:41:12")
                .silent(11, 14, "10:41:30")
                .every(2, Duration.ofMinutes(5))
                .heard(2, "10:40:00")
                .now("10:43:30");
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(place.cause().settled()).isFalse();
        assertThat(place.cause().evidence()).contains("Not asked since: sw-2.");
        assertThat(place.now("10:51:12").cause().settled())
                .as("two of its intervals after the first miss")
                .isTrue();
    }

    @Test
    void whenDevicesBehindASilentGatewayAnswerItIsTheGatewaysManagement() {
        Finding cause = small().silent(1, "10:41:12").cause();
        assertThat(cause.key()).isEqualTo(silence(1));
        assertThat(cause.cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(cause.evidence())
                .containsExactly(
                        "Gateway gw-1 last answered at 10:40:12.",
                        "5 of 5 devices behind it answered since: it passes traffic on.",
                        "So it is its own management that fails: it hangs, or its SNMP, address or access list was"
                                + " changed.");
        assertThat(cause.affected()).isEmpty();
        assertThat(cause.cause().advice())
                .as("switched off, it would take down a site that works")
                .contains("do not switch it off");
    }

    @Test
    void whoWasLostLongBeforeOrLaterIsNoReasonToBlameMoreThanTheManagement() {
        Place place = small().silent(1, "10:41:12").silent(13, "10:42:50").silent(14, "08:12:00");
        assertThat(place.finding(1).cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(place.finding(1).evidence())
                .contains("4 of 5 devices behind it answered since: it passes traffic on.");
    }

    @Test
    void whereSomeWereLostWithASwitchThatPassesTrafficOnMoreThanItsManagementMayFail() {
        Finding cause = small().silent(2, "10:41:12").silent(13, 14, "10:41:30").finding(2);
        assertThat(cause.cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(cause.sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(cause.evidence())
                .endsWith(
                        "2 of 4 devices behind it answered since: it passes traffic on.",
                        "2 others were lost at the same time as it, so more than its management may fail.");
    }

    @Test
    void oneOfTwoGatewaysTakesItsPartOfTheSiteOnly() {
        Place place = small().gateway(5).point(51).hangs(51, 5, 1);
        place.silent(1, "10:41:12").silent(2, "10:41:20").silent(11, 14, "10:41:30");
        Finding cause = place.cause();
        assertThat(cause.key()).isEqualTo(silence(1));
        assertThat(cause.cause()).isEqualTo(CauseKind.UPLINK_LOST);
        assertThat(cause.affected()).containsExactlyInAnyOrder(2L, 11L, 12L, 13L, 14L);
        assertThat(cause.evidence()).contains("2 other devices of the site answered, not known to be behind it.");
    }

    @Test
    void aLostSwitchExplainsItsAccessPointsWhileItsPortHasLink() {
        Place place = small().silent(2, "10:41:12")
                .silent(11, 14, "10:41:30")
                .port(1, 3, PortState.UP)
                .read(1, "10:43:05");
        Finding cause = place.cause();
        assertThat(cause.key()).isEqualTo(silence(2));
        assertThat(cause.cause()).isEqualTo(CauseKind.SWITCH_LOST);
        assertThat(cause.evidence())
                .containsExactly(
                        "Switch sw-2 last answered at 10:40:12.",
                        "4 of 4 access points below it silent since 10:41.",
                        "gw-1, on which it hangs, answered at 10:43:50.",
                        "Port 3 of gw-1 has link, read at 10:43:05.",
                        "Power and cable are good: it hangs, or its SNMP or address was changed.");
        assertThat(cause.settled()).isTrue();
        assertThat(place.finding(12).evidence())
                .containsExactly(
                        "Access point ap-12 last answered at 10:40:30.",
                        "It hangs below switch sw-2, which does not answer either: that explains it.");
    }

    @Test
    void aSwitchWhosePortHasNoLinkLostItsPower() {
        Finding cause = small().silent(2, "10:41:12")
                .silent(11, 14, "10:41:30")
                .port(1, 3, PortState.DOWN, PowerState.SEARCHING)
                .read(1, "10:43:05")
                .cause();
        assertThat(cause.cause()).isEqualTo(CauseKind.SWITCH_POWER);
        assertThat(cause.evidence())
                .endsWith("Port 3 of gw-1 has no link, read at 10:43:05.", "So it has no power, or its cable is out.");
    }

    @Test
    void aSwitchThatHasMissedTwoRoundsIsTheCauseOfTheSilentOnesBelow() {
        Place place = small().silent(11, "10:41:02").missing(2, 2, "10:41:30").missing(12, 2, "10:41:20");
        place.missing(13, 2, "10:41:25").missing(14, 2, "10:41:28");
        assertThat(place.cause().key()).as("its alarm is raised early").isEqualTo(silence(2));
        assertThat(place.finding(11).causedBy()).contains(silence(2));
        assertThat(place.findings()).hasSize(2);
    }

    @Test
    void aSwitchThatMissedOneRoundOnlyIsNotBlamedForOneAccessPoint() {
        Place place = small().silent(11, "10:41:02").missing(2, 1, "10:43:30");
        Finding cause = place.cause();
        assertThat(cause.key()).isEqualTo(silence(11));
        assertThat(cause.cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(cause.settled()).isFalse();
        assertThat(cause.evidence())
                .contains("sw-2, on which it hangs, missed its last round too: the next ones will tell more.");
    }

    @Test
    void whenAccessPointsOnASilentSwitchAnswerItIsTheSwitchsManagement() {
        Finding cause = small().silent(2, "10:41:12").cause();
        assertThat(cause.cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(cause.evidence()).contains("4 of 4 devices behind it answered since: it passes traffic on.");
    }

    /** The switch comes back, and is asked last of all: until then it stays what took the others down. */
    @Test
    void whileThoseBelowComeBackTheSwitchStaysTheCauseUntilItIsAskedAgain() {
        Place place = small().silent(2, "10:41:12")
                .asked(2, "10:43:12")
                .silent(13, 14, "10:41:30")
                .heard(11, "10:43:40")
                .heard(12, "10:43:45")
                .port(1, 3, PortState.UP)
                .read(1, "10:43:05");
        assertThat(place.finding(2).cause())
                .as("nobody knows that they fell with it")
                .isEqualTo(CauseKind.DEVICE_LOST);
        place.fallen(2, 11L, 12L, 13L, 14L);
        assertThat(place.finding(2).cause()).isEqualTo(CauseKind.SWITCH_LOST);
        assertThat(place.finding(13).causedBy()).contains(silence(2));
        place.asked(2, "10:43:50");
        assertThat(place.finding(2).cause())
                .as("asked again it is silent still: it passes traffic on")
                .isEqualTo(CauseKind.DEVICE_LOST);
    }

    /** One below the lower switch is heard first: the lower one was not asked since, and the others fell with the upper one. */
    @Test
    void inAChainOneThatIsBackSetsTheOthersOfItsSwitchNotApart() {
        Place place = chain().asked(2, "10:43:12").asked(3, "10:43:15").heard(31, "10:43:40");
        assertThat(place.finding(32).causedBy()).contains(silence(2));
        assertThat(place.finding(33).causedBy()).contains(silence(2));
        assertThat(place.finding(3).causedBy()).contains(silence(2));
        place.asked(3, "10:43:50");
        assertThat(place.finding(32).causedBy())
                .as("asked again the lower switch is silent still, while one of its own answers")
                .isNotEqualTo(Optional.of(silence(2)));
    }

    /** The lower switch is heard first: that tells nothing of those below it until they are asked again. */
    @Test
    void inAChainTheLowerSwitchThatIsBackSetsThoseBelowItNotApart() {
        Place place = chain().asked(2, "10:43:12").heard(3, "10:43:40");
        for (long below : List.of(31L, 32L, 33L)) {
            place.asked(below, "10:43:30");
        }
        assertThat(place.finding(31).causedBy()).contains(silence(2));
        assertThat(place.finding(2).affected()).contains(31L, 32L, 33L);
        for (long below : List.of(31L, 32L, 33L)) {
            place.asked(below, "10:43:50");
        }
        assertThat(place.finding(31).causedBy()).as("asked again in vain").isNotEqualTo(Optional.of(silence(2)));
    }

    private static Place chain() {
        return small().bridge(3)
                .hangs(3, 2, 24)
                .points(31, 33, 3)
                .silent(2, "10:41:12")
                .silent(3, "10:41:15")
                .silent(11, 14, "10:41:30")
                .silent(31, 33, "10:41:40")
                .fallen(2, 3L, 11L, 12L, 13L, 14L, 31L, 32L, 33L);
    }

    @Test
    void inAChainOfSwitchesTheUpperOneIsTheCause() {
        Place place = small().bridge(3).hangs(3, 2, 24).points(31, 33, 3);
        place.silent(2, "10:41:12")
                .silent(3, "10:41:15")
                .silent(11, 14, "10:41:30")
                .silent(31, 33, "10:41:40");
        assertThat(place.cause().key()).isEqualTo(silence(2));
        assertThat(Finding.pointingTo(silence(2), place.findings())).hasSize(8);
        assertThat(place.finding(32).causedBy()).contains(silence(2));
    }

    @Test
    void twoCausesInOneSiteStayApart() {
        Place place = small().bridge(3).hangs(3, 1, 4).points(31, 34, 3);
        place.silent(3, "10:41:12").silent(31, 34, "10:41:20").silent(12, "09:30:00");
        place.port(2, 2, PortState.UP)
                .read(2, "10:43:00")
                .port(1, 4, PortState.UP)
                .read(1, "10:43:00");
        assertThat(place.finding(3).cause()).isEqualTo(CauseKind.SWITCH_LOST);
        assertThat(place.finding(12).cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(place.finding(12).causedBy()).isEmpty();
        assertThat(Finding.pointingTo(silence(3), place.findings()))
                .containsExactlyInAnyOrder(silence(31), silence(32), silence(33), silence(34));
    }

    @Test
    void aSwitchThatWasLostLaterDoesNotExplainWhoWasSilentBefore() {
        Place place = small().silent(11, "08:00:00").silent(2, "10:41:12").silent(12, 14, "10:41:30");
        assertThat(place.finding(11).causedBy()).isEmpty();
        assertThat(place.finding(12).causedBy()).contains(silence(2));
    }

    @Test
    void aPausedSwitchExplainsNothingButIsNamed() {
        Place place = small().unwatched(2).silent(11, "10:41:00");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(place.cause().evidence())
                .contains("sw-2, on which it hangs, is paused or not watched, so it may as well be that one.");
    }

    @Test
    void overAPausedSwitchALostOneStillExplains() {
        Place place = small().bridge(3).hangs(3, 2, 24).points(31, 33, 3);
        place.silent(2, "10:41:12").unwatched(3).silent(11, 14, "10:41:30").silent(31, 33, "10:41:40");
        assertThat(place.finding(31).causedBy()).contains(silence(2));
    }

    @Test
    void aDeviceWhosePlaceIsOldDoesNotSpeakForTheSwitch() {
        Place place = small().point(15).hungOnce(15, 2, 9);
        place.silent(2, "10:41:12").silent(11, 14, "10:41:30");
        assertThat(place.cause().key())
                .as("ap-15 answers, but most likely hangs elsewhere by now")
                .isEqualTo(silence(2));
        assertThat(place.finding(11).causedBy()).contains(silence(2));
    }

    @Test
    void afterTheCauseIsOverItsDevicesGetTimeToComeBack() {
        AlarmKey key = silence(2);
        Place place = small().silent(11, 14, "10:41:30")
                .ended(key, CauseKind.SWITCH_POWER, "switch sw-2", "10:43:40", Set.of(11L, 12L, 13L, 14L));
        assertThat(place.findings())
                .allMatch(finding -> finding.causedBy().filter(key::equals).isPresent());
        assertThat(place.finding(13).evidence())
                .containsExactly(
                        "Access point ap-13 last answered at 10:40:30.",
                        "Switch sw-2 is back since 10:43:40: this one may still be starting, or has not been asked"
                                + " again yet.");
        place.now("10:48:41");
        assertThat(place.findings()).anyMatch(finding -> finding.causedBy().isEmpty());
    }

    @Test
    void aNewLossDuringThatTimeIsNoneOfIts() {
        Place place = small().silent(11, "10:43:45")
                .ended(silence(2), CauseKind.SWITCH_POWER, "switch sw-2", "10:43:40", Set.of(11L));
        assertThat(place.finding(11).causedBy()).isEmpty();
    }

    @Test
    void whenTheUplinkIsLostAgainWhoHadNotComeBackBelongsToItStill() {
        Set<Long> all = Set.of(1L, 2L, 11L, 12L, 13L, 14L);
        Place place = small().silent(11, 14, "09:41:30")
                .silent(2, "09:41:20")
                .silent(1, "10:41:12")
                .ended(uplink(), CauseKind.UPLINK_LOST, "the site's line", "10:39:40", all);
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(Finding.pointingTo(uplink(), place.findings())).hasSize(6);
    }

    @Test
    void twoHundredAccessPointsBehindOneUplinkAreOneCause() {
        Place place = new Place().gateway(1);
        for (long sw = 2; sw <= 11; sw++) {
            place.bridge(sw).hangs(sw, 1, (int) sw).points(sw * 100, sw * 100 + 19, sw);
        }
        place.silent(1, "10:41:12");
        LongStream.rangeClosed(2, 11)
                .forEach(sw -> place.silent(sw, "10:41:30").silent(sw * 100, sw * 100 + 19, "10:41:40"));
        assertThat(place.cause().key()).isEqualTo(uplink());
        assertThat(place.cause().evidence()).contains("200 of 200 access points silent since 10:41.");
        assertThat(place.findings()).hasSize(212);
    }

    @Test
    void anAccessPointThatIsAloneLeavesLineAndDeviceOpen() {
        Finding cause = new Place().point(11).silent(11, "10:41:00").cause();
        assertThat(cause.cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(cause.sureness()).isEqualTo(Sureness.OPEN);
        assertThat(cause.evidence())
                .containsExactly(
                        "Access point ap-11 last answered at 10:40:00.",
                        "It is the only device of the site.",
                        "It may be the site's line, its power, or the access point itself.");
    }

    @Test
    void aGatewayThatIsAloneMeansLineOrGateway() {
        Finding cause = new Place().gateway(1).silent(1, "10:41:00").cause();
        assertThat(cause.key()).isEqualTo(silence(1));
        assertThat(cause.cause()).isEqualTo(CauseKind.UPLINK_LOST);
        assertThat(cause.sureness()).isEqualTo(Sureness.LIKELY);
    }

    @Test
    void aRefusingGatewayProvesThatTheLineWorks() {
        Place place =
                new Place().gateway(1).refuses(1).point(11).hangs(11, 1, 2).silent(11, "10:41:00");
        assertThat(place.cause().evidence())
                .contains("gw-1, on which it hangs, rejects our credentials: its ports cannot be read.");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.DEVICE_LOST);
    }

    @Test
    void causesComeBeforeWhatTheyExplain() {
        List<Finding> findings =
                small().silent(2, "10:41:12").silent(11, 14, "10:41:30").findings();
        assertThat(findings.get(0).key()).isEqualTo(silence(2));
    }
}
