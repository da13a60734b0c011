package org.roundsman.triage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.triage.Place.silence;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.roundsman.alarms.CauseKind;
import org.roundsman.measure.Outcome;
import org.roundsman.topology.PortState;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;

/**
 * What the switch port tells about one lost access point. States are those of RFC 2863 (ifOperStatus) and RFC 3621
 * (pethPsePortDetectionStatus); what follows from them is this project's own rule.
 */
class PortCausesTest {

    /** sw-2 with ap-11 to ap-18 on ports 1 to 8; ap-17 on port 7 is lost. */
    private static Place one() {
        return new Place().gateway(1).bridge(2).hangs(2, 1, 3).points(11, 18, 2).silent(17, "10:41:00");
    }

    @ParameterizedTest(name = "{0}, {1}: {2}")
    @MethodSource("ports")
    void thePortTells(PortState link, PowerState power, CauseKind cause, List<String> sentences) {
        Place place = one().read(2, "10:43:05");
        Finding found = (power == null ? place.port(2, 7, link) : place.port(2, 7, link, power)).cause();
        assertThat(found.key()).isEqualTo(silence(17));
        assertThat(found.cause()).isEqualTo(cause);
        assertThat(found.evidence())
                .startsWith(
                        "Access point ap-17 last answered at 10:40:00.",
                        "sw-2, on which it hangs, answered at 10:43:50.");
        assertThat(found.evidence().subList(2, found.evidence().size())).isEqualTo(sentences);
        assertThat(found.settled()).isTrue();
        assertThat(found.portsWanted()).isEmpty();
    }

    static Stream<Arguments> ports() {
        return Stream.of(delivering(), notDelivering(), withoutPower()).flatMap(each -> each);
    }

    private static final String GOOD = "Power and cable are good: it hangs, or its SNMP or address was changed.";

    private static Stream<Arguments> delivering() {
        String powered = "Port 7 of sw-2 delivers power, class 4, and ";
        return Stream.of(
                Arguments.of(
                        PortState.UP,
                        PowerState.DELIVERING,
                        CauseKind.DEVICE_LOST,
                        List.of(powered + "has link, read at 10:43:05.", GOOD)),
                Arguments.of(
                        PortState.DOWN,
                        PowerState.DELIVERING,
                        CauseKind.LINK_DOWN,
                        List.of(
                                powered + "has no link, read at 10:43:05.",
                                "It draws power but has no link: it is starting, or its network port or the cable is"
                                        + " broken.")));
    }

    private static Stream<Arguments> notDelivering() {
        String elsewhere = "With link it has power from elsewhere: it hangs, or its SNMP was switched off.";
        String fault = "Port 7 of sw-2 reports a power fault, and the port has no link, read at 10:43:05.";
        String mend = "The port delivers no power until that is mended: cable, device, or the switch's port.";
        return Stream.of(
                Arguments.of(
                        PortState.DOWN,
                        PowerState.DISABLED,
                        CauseKind.PORT_NOT_DELIVERING,
                        List.of(
                                "Power on port 7 of sw-2 is switched off, and the port has no link, read at 10:43:05.",
                                "Switched on again, the device should start, if it has no power from elsewhere.")),
                Arguments.of(PortState.DOWN, PowerState.FAULT, CauseKind.PORT_NOT_DELIVERING, List.of(fault, mend)),
                Arguments.of(
                        PortState.DOWN, PowerState.OTHER_FAULT, CauseKind.PORT_NOT_DELIVERING, List.of(fault, mend)),
                Arguments.of(
                        PortState.DOWN,
                        PowerState.SEARCHING,
                        CauseKind.NO_POWER_DRAWN,
                        List.of(
                                "Port 7 of sw-2 offers power, but nothing draws it, and the port has no link, read at"
                                        + " 10:43:05.",
                                "So the cable is out or broken, or the device itself is dead.")),
                Arguments.of(
                        PortState.UP,
                        PowerState.SEARCHING,
                        CauseKind.DEVICE_LOST,
                        List.of(
                                "Port 7 of sw-2 offers power, but nothing draws it, and the port has link, read at"
                                        + " 10:43:05.",
                                elsewhere)));
    }

    private static Stream<Arguments> withoutPower() {
        return Stream.of(
                Arguments.of(
                        PortState.DOWN,
                        null,
                        CauseKind.LINK_DOWN,
                        List.of(
                                "Port 7 of sw-2 has no link, read at 10:43:05.",
                                "So it has no power, or its cable is out.")),
                Arguments.of(
                        PortState.UP,
                        null,
                        CauseKind.DEVICE_LOST,
                        List.of("Port 7 of sw-2 has link, read at 10:43:05.", GOOD)),
                Arguments.of(
                        PortState.UNKNOWN,
                        null,
                        CauseKind.DEVICE_LOST,
                        List.of("Port 7 of sw-2 does not say whether it has link, read at 10:43:05.")));
    }

    @Test
    void aPortReadBeforeTheSilenceTellsNothingAndIsWishedFor() {
        Place place = one().port(2, 7, PortState.DOWN).read(2, "10:31:00").now("10:43:10");
        Finding found = place.cause();
        assertThat(found.cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(found.sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(found.evidence()).contains("Port 7 of sw-2 was last read at 10:31:00, before the silence began.");
        assertThat(found.portsWanted()).containsExactly(2L);
        assertThat(found.settled()).isFalse();
        assertThat(place.now("10:43:15").cause().settled())
                .as("two intervals and 15 s after the first miss nobody waits any longer")
                .isTrue();
    }

    @Test
    void aHostThatSaysThatNothingListensHasPowerAndAWayToIt() {
        Place place =
                one().says(17, Outcome.PORT_CLOSED).port(2, 7, PortState.UP).read(2, "10:43:05");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(place.cause().sureness()).isEqualTo(Sureness.SURE);
        assertThat(place.cause().evidence())
                .endsWith("Its host is there, but nothing listens on its SNMP port: SNMP was switched off or is"
                        + " starting.");
    }

    @Test
    void withAnUnknownPortItIsSaidThatNothingCanBeTold() {
        Place place = new Place().gateway(1).points(11, 13, 1).point(17).silent(17, "10:41:00");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(place.cause().sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(place.cause().evidence())
                .containsExactly(
                        "Access point ap-17 last answered at 10:40:00.",
                        "On which port it hangs is not known, so whether it has power and link cannot be told.");
    }

    @Test
    void aSwitchKnownWithoutItsPortIsNamed() {
        Place place = one().hangsSomewhere(17, 2).read(2, "10:43:05");
        assertThat(place.cause().evidence())
                .contains("On which port of sw-2 it hangs is not known, so whether it has power and link cannot be"
                        + " told.");
    }

    @Test
    void oldEvidenceOfThePlaceMakesItLessSure() {
        Place place = one().hungOnce(17, 2, 7)
                .port(2, 7, PortState.DOWN, PowerState.FAULT)
                .read(2, "10:43:05");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.PORT_NOT_DELIVERING);
        assertThat(place.cause().sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(place.cause().evidence()).contains("That it hangs there rests on old evidence, last seen at 10:30.");
    }

    @Test
    void aPowerPortKnownByOrderOnlyMakesItLessSure() {
        Place place = one().port(2, 7, PortState.DOWN, PowerState.FAULT, true, PowerMatch.ORDER)
                .read(2, "10:43:05");
        assertThat(place.cause().sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(place.cause().evidence()).contains("Which power port is that port is known by order only.");
    }

    @Test
    void halfOfTheAccessPointsOnAnAnsweringSwitchAreNotSureWithWhatSpeaksForWhat() {
        Place place = new Place().gateway(1).bridge(2).hangs(2, 1, 3).points(11, 14, 2);
        place.silent(11, "10:41:00").silent(12, "10:41:20");
        place.port(2, 1, PortState.UP).port(2, 2, PortState.UP).read(2, "10:43:05");
        Finding cause = place.cause();
        assertThat(cause.key()).isEqualTo(silence(11));
        assertThat(cause.cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(cause.sureness()).isEqualTo(Sureness.OPEN);
        assertThat(cause.evidence())
                .contains(
                        "sw-2, on which it hangs, answered at 10:43:50.",
                        "2 of 4 access points on sw-2 were lost together since 10:41: that speaks for something that"
                                + " they share.",
                        "The other 2 answer: that speaks against what they hang on as a whole.");
        assertThat(cause.affected()).containsExactly(12L);
        assertThat(place.finding(12).causedBy()).contains(silence(11));
    }

    @Test
    void manyPortsWithoutPowerPointToTheSupply() {
        Place place = one().silent(11, 13, "10:41:30").read(2, "10:43:05");
        for (int port : List.of(1, 2, 3, 7)) {
            place.port(2, port, PortState.DOWN, PowerState.FAULT);
        }
        assertThat(place.cause().cause()).isEqualTo(CauseKind.PORT_NOT_DELIVERING);
        assertThat(place.cause().key()).isEqualTo(silence(17));
        assertThat(place.cause().evidence()).endsWith("Look at the power supply of sw-2 first.");
        assertThat(Finding.pointingTo(silence(17), place.findings())).hasSize(3);
    }

    @Test
    void manyPortsThatOfferPowerInVainPointToTheCablesAndNotToTheSupply() {
        Place place = one().silent(11, 13, "10:41:30").read(2, "10:43:05");
        for (int port : List.of(1, 2, 3, 7)) {
            place.port(2, port, PortState.DOWN, PowerState.SEARCHING);
        }
        assertThat(place.cause().cause()).isEqualTo(CauseKind.NO_POWER_DRAWN);
        assertThat(place.cause().evidence())
                .endsWith("Look for a power strip, a patch panel or a cable duct that they share.");
    }

    /** Who reads that the port offers power is not sent to a port that is switched off. */
    @Test
    void whatToDoFitsWhatThePortSays() {
        assertThat(CauseKind.NO_POWER_DRAWN.word()).isNotEqualTo(CauseKind.PORT_NOT_DELIVERING.word());
        assertThat(CauseKind.NO_POWER_DRAWN.advice())
                .contains("cable", "patch panel", "access point first")
                .doesNotContain("switched off", "budget");
        assertThat(CauseKind.PORT_NOT_DELIVERING.advice()).contains("switched off", "budget", "fault");
    }

    @Test
    void twoOfEightWithDifferentFaultsAreTwoCauses() {
        Place place = one().silent(12, "10:41:30").read(2, "10:43:05");
        place.port(2, 7, PortState.DOWN, PowerState.FAULT).port(2, 2, PortState.UP, PowerState.DELIVERING);
        assertThat(place.finding(17).causedBy()).isEmpty();
        assertThat(place.finding(12).causedBy()).isEmpty();
    }

    @Test
    void onesThatOnlyMissSoFarCountForTheGroupButKeepItUnsettled() {
        Place place =
                one().missing(11, 2, "10:41:30").missing(12, 2, "10:41:31").missing(13, 2, "10:41:32");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(place.cause().affected()).containsExactlyInAnyOrder(11L, 12L, 13L);
        assertThat(place.cause().settled()).isFalse();
        assertThat(place.findings()).hasSize(1);
    }

    @Test
    void behindAnAnsweringGatewayAllSilentWithoutAKnownPlaceShareSomethingUnwatched() {
        Place place = new Place().gateway(1).point(11).point(12).point(13).silent(11, 13, "10:41:00");
        assertThat(place.cause().cause()).isEqualTo(CauseKind.NOT_SURE);
        assertThat(place.cause().evidence())
                .contains("3 of 3 access points whose switch port is not known were lost together since 10:41: that"
                        + " speaks for something that they share.")
                .endsWith("It may be a switch that is not watched, its power, or a change made to all of them.");
    }
}
