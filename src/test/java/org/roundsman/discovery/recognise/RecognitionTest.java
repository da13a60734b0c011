package org.roundsman.discovery.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.discovery.Decision;
import org.roundsman.discovery.Standing;

/**
 * Serial numbers compare between devices of one maker only (RFC 6933, entPhysicalMfgName); an engine ID ought to be unique
 * (RFC 3411), and cheap equipment repeats it (common practice, no source). The order of marks is the project's own.
 */
class RecognitionTest {

    private static final long SITE = 1;
    private static final long OTHER_SITE = 2;
    private static final long CUSTOMER = 10;
    private static final String MAC = "00:00:5e:00:53:01";
    private static final String OTHER_MAC = "00:00:5e:00:53:02";
    private static final String ENGINE = "80007ed9047061706572";

    private static Identity identity(String serial, String mac, String engine) {
        return Identity.of(serial, "Tamarack Radio", mac, List.of(), engine);
    }

    private static Answer answer(long id, String host, Identity identity) {
        return new Answer(id, host, 161, "ap-" + id, Instant.EPOCH.plusSeconds(1000 * id), identity);
    }

    private static Known known(long id, long site, String host, Identity identity) {
        return new Known(id, CUSTOMER, site, "Pier", "AP " + id, host, 161, identity);
    }

    private static List<Decision> decide(List<Answer> answers, Known... devices) {
        return Recognition.decide(Grouping.of(answers), List.of(devices), SITE, CUSTOMER);
    }

    private static Decision one(Answer answer, Known... devices) {
        return decide(List.of(answer), devices).get(0);
    }

    @Test
    void aDeviceIsRecognisedByEachMarkAtAnotherAddress() {
        for (Identity identity : List.of(
                identity("TR22-0001", "", ""),
                identity("", MAC, ""),
                identity("", "", ENGINE),
                Identity.of("", "", "", List.of(MAC), ""))) {
            Decision decision = one(answer(1, "192.0.2.9", identity), known(5, SITE, "192.0.2.5", identity));
            assertThat(decision.standing()).isEqualTo(Standing.NEW_ADDRESS);
            assertThat(decision.deviceId()).isEqualTo(5);
            assertThat(decision.evidence()).anyMatch(line -> line.startsWith("same "));
        }
    }

    @Test
    void atItsOwnAddressItIsKnownAndAtAnotherSiteItIsOfferedAsAMove() {
        Identity identity = identity("TR22-0001", MAC, ENGINE);
        assertThat(one(answer(1, "192.0.2.5", identity), known(5, SITE, "192.0.2.5", identity))
                        .standing())
                .isEqualTo(Standing.KNOWN);
        assertThat(one(answer(1, "192.0.2.5", identity), known(5, OTHER_SITE, "192.0.2.5", identity))
                        .standing())
                .isEqualTo(Standing.MOVED);
        assertThat(one(answer(1, "192.0.2.9", identity), known(5, SITE, "pier.example", identity))
                        .standing())
                .isEqualTo(Standing.KNOWN);
    }

    @Test
    void anotherCustomersDeviceIsAWarningAndNeverNamed() {
        Identity identity = identity("TR22-0001", MAC, ENGINE);
        Known theirs = new Known(5, 11, 3, "Secret house", "Secret AP", "192.0.2.5", 161, identity);
        Decision decision = one(answer(1, "192.0.2.5", identity), theirs);
        assertThat(decision.standing()).isEqualTo(Standing.NEW);
        assertThat(decision.deviceId()).isNull();
        assertThat(decision.toString()).contains("another customer").doesNotContain("Secret");
    }

    @Test
    void aSharedEngineIdProvesNothing() {
        List<Answer> clones = List.of(
                answer(1, "192.0.2.1", identity("", "", ENGINE)), answer(2, "192.0.2.2", identity("", "", ENGINE)));
        assertThat(Grouping.of(clones)).hasSize(2);
        assertThat(decide(clones, known(5, SITE, "192.0.2.5", identity("", "", ENGINE))))
                .extracting(Decision::standing)
                .containsOnly(Standing.NEW);
        Known first = known(5, SITE, "192.0.2.5", identity("", "", ENGINE));
        Known second = known(6, SITE, "192.0.2.6", identity("", "", ENGINE));
        Decision decision = one(clones.get(0), first, second);
        assertThat(decision.standing()).isEqualTo(Standing.NEW);
        assertThat(decision.evidence()).anyMatch(line -> line.contains("shared by 2 devices and proves nothing"));
    }

    @Test
    void aWeakerMarkDoesNotCountAgainstAStrongerOne() {
        Known device = known(5, SITE, "192.0.2.5", identity("TR22-0001", MAC, ENGINE));
        Decision decision = one(answer(1, "192.0.2.9", identity("TR22-0002", OTHER_MAC, ENGINE)), device);
        assertThat(decision.standing()).isEqualTo(Standing.NEW);
        assertThat(decision.evidence()).anyMatch(line -> line.contains("but another serial number"));
    }

    @Test
    void serialNumbersOfDifferentMakersAreNotTheSame() {
        Identity other = Identity.of("TR22-0001", "Alder Switching", "", List.of(), "");
        Decision decision =
                one(answer(1, "192.0.2.9", identity("TR22-0001", "", "")), known(5, SITE, "192.0.2.5", other));
        assertThat(decision.standing()).isEqualTo(Standing.NEW);
    }

    @Test
    void theSameSerialNumberOnAnotherBoardIsDoubtful() {
        Decision decision = one(
                answer(1, "192.0.2.9", identity("TR22-0001", OTHER_MAC, "")),
                known(5, SITE, "192.0.2.5", identity("TR22-0001", MAC, "")));
        assertThat(decision.standing()).isEqualTo(Standing.DOUBTFUL);
        assertThat(decision.adoptable()).isTrue();
    }

    @Test
    void anotherUnitAtAKnownAddressIsDoubtfulAndNotAdopted() {
        Decision decision = one(
                answer(1, "192.0.2.5", identity("TR22-0002", OTHER_MAC, "")),
                known(5, SITE, "192.0.2.5", identity("TR22-0001", MAC, "")));
        assertThat(decision.standing()).isEqualTo(Standing.DOUBTFUL);
        assertThat(decision.adoptable()).isFalse();
    }

    @Test
    void twoDevicesThatSwappedAddressesAreBothRecognised() {
        Identity one = identity("TR22-0001", MAC, "");
        Identity two = identity("TR22-0002", OTHER_MAC, "");
        List<Decision> decisions = decide(
                List.of(answer(1, "192.0.2.6", one), answer(2, "192.0.2.5", two)),
                known(5, SITE, "192.0.2.5", one),
                known(6, SITE, "192.0.2.6", two));
        assertThat(decisions).extracting(Decision::standing).containsOnly(Standing.NEW_ADDRESS);
        assertThat(decisions).extracting(Decision::deviceId).containsExactly(5L, 6L);
    }

    @Test
    void aMereAddressGivesWayToEvidenceElsewhere() {
        Identity identity = identity("TR22-0001", MAC, "");
        List<Decision> decisions = decide(
                List.of(answer(1, "192.0.2.5", identity("", "", "")), answer(2, "192.0.2.9", identity)),
                known(5, SITE, "192.0.2.5", identity));
        assertThat(decisions).extracting(Decision::standing).containsExactly(Standing.DOUBTFUL, Standing.NEW_ADDRESS);
    }

    @Test
    void twoAddressesOfOneDeviceAreShownOnce() {
        Identity identity = identity("TR22-0001", MAC, ENGINE);
        List<Group> groups = Grouping.of(List.of(answer(1, "192.0.2.1", identity), answer(2, "192.0.2.129", identity)));
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).answers()).extracting(Answer::host).containsExactly("192.0.2.1", "192.0.2.129");
    }

    @Test
    void aSerialNumberOnTwoBoardsMergesNothing() {
        List<Answer> answers = List.of(
                answer(1, "192.0.2.1", identity("TR22-0001", MAC, "")),
                answer(2, "192.0.2.2", identity("TR22-0001", OTHER_MAC, "")),
                answer(3, "192.0.2.3", identity("TR22-0001", "", "")));
        assertThat(Grouping.of(answers)).hasSize(3);
    }

    /** Fillers that equipment reports; common practice, no source. */
    @ParameterizedTest
    @ValueSource(
            strings = {"", " ", "0", "none", "N/A", "123456789", "0000000000", "XXXXXXXX", "To be filled by O.E.M.", "1"
            })
    void fillersAreNoSerialNumbers(String serial) {
        assertThat(Mark.SERIAL.clean(serial)).isEmpty();
    }

    /** RFC 3411: 5 to 32 octets, neither all zeros nor all ones; IEEE 802: a group address is nobody's own. */
    @Test
    void valuesThatStandardsExcludeAreNoMarks() {
        assertThat(Mark.ENGINE_ID.clean("0000000000")).isEmpty();
        assertThat(Mark.ENGINE_ID.clean("ffffffffffff")).isEmpty();
        assertThat(Mark.ENGINE_ID.clean("80007e")).isEmpty();
        assertThat(Mark.BASE_MAC.clean("01:00:5e:00:00:01")).isEmpty();
        assertThat(Mark.BASE_MAC.clean("ff:ff:ff:ff:ff:ff")).isEmpty();
        assertThat(Mark.BASE_MAC.clean("00:00:5E:00:53:01")).isEqualTo(MAC);
    }
}
