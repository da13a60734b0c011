package org.roundsman.topology.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.TableFixture;

/**
 * Places from evidence. What LLDP and forwarding tables mean is IEEE 802.1AB and RFC 4188; what an edge port is, and the
 * order of strength, is common practice without a source.
 */
class FindingTest {

    private static void on(Attachment place, long parent, int port, How how) {
        assertThat(place.parentId()).as(place.toString()).hasValue(parent);
        assertThat(place.port()).as(place.toString()).hasValue(port);
        assertThat(place.how()).as(place.toString()).isEqualTo(how);
    }

    @Test
    void aChainOfSwitchesHangsBelowTheGateway() {
        Map<Long, Attachment> places = new Site()
                .gateway(1)
                .bridge(2)
                .bridge(3)
                .bridge(4)
                .point(9)
                .cable(1, 1, 2, 24)
                .cable(2, 1, 3, 24)
                .cable(3, 1, 4, 24)
                .hears(4, 7, 9)
                .places();
        on(places.get(2L), 1, 1, How.LLDP);
        on(places.get(3L), 2, 1, How.LLDP);
        on(places.get(4L), 3, 1, How.LLDP);
        on(places.get(9L), 4, 7, How.LLDP);
        assertThat(places.get(1L).known()).isFalse();
        assertThat(places.values())
                .allSatisfy(place -> assertThat(place.notes()).isEmpty());
    }

    /** The switch offers no LLDP: the access point hears it, and names its port. */
    @Test
    void anAccessPointsOwnViewIsEnough() {
        byte[] chassis = TableFixture.octets(Site.mac(2));
        Attachment place = new Site()
                .bridge(2)
                .point(9)
                .hears(
                        9,
                        1,
                        Site.announced(4, chassis, 5, "7".getBytes(StandardCharsets.UTF_8), "", List.of()),
                        Site.FIRST,
                        0)
                .places()
                .get(9L);
        on(place, 2, 7, How.LLDP);
        assertThat(place.reason()).contains("it hears sw-2");
    }

    @Test
    void chassisBeatsPortAddressManagementAddressAndName() {
        byte[] stranger = {2, 0, 0x5e, 0, 0x53, 9};
        byte[] text = "box".getBytes(StandardCharsets.UTF_8);
        Site site = new Site().bridge(2).point(9).point(10).point(11).point(12);
        site.hears(
                2, 1, Site.announced(4, TableFixture.octets(Site.mac(9)), 7, text, "ap-12", List.of()), Site.FIRST, 0);
        site.hears(
                2, 2, Site.announced(4, stranger, 3, TableFixture.octets(Site.mac(10)), "", List.of()), Site.FIRST, 0);
        site.hears(2, 3, Site.announced(7, text, 7, text, "", List.of("192.0.2.11")), Site.FIRST, 0);
        site.hears(2, 4, Site.announced(7, text, 7, text, "AP-12", List.of()), Site.FIRST, 0);
        Map<Long, Attachment> places = site.places();
        on(places.get(9L), 2, 1, How.LLDP);
        on(places.get(10L), 2, 2, How.LLDP);
        on(places.get(11L), 2, 3, How.LLDP);
        on(places.get(12L), 2, 4, How.LLDP);
        assertThat(places.get(9L).reason()).contains("chassis identifier MAC 00:00:5e:00:53:09");
        assertThat(places.get(12L).reason()).contains("system name");
        assertThat(places.get(12L).notes()).anyMatch(note -> note.contains("is that of ap-12, not of ap-9"));
    }

    @Test
    void aNameThatTwoHaveDecidesNothing() {
        byte[] text = "box".getBytes(StandardCharsets.UTF_8);
        Map<Long, Attachment> places = new Site()
                .bridge(2)
                .point(9, "access-point")
                .point(10, "access-point")
                .hears(2, 4, Site.announced(7, text, 7, text, "access-point", List.of()), Site.FIRST, 0)
                .places();
        assertThat(places.get(9L).known()).isFalse();
        assertThat(places.get(10L).known()).isFalse();
        assertThat(places.get(9L).notes()).anyMatch(note -> note.contains("several devices (ap-10, ap-9)"));
    }

    /** With the right address a wrong name does no harm, and is shown. */
    @Test
    void aWrongNameDoesNotMoveADevice() {
        byte[] id = TableFixture.octets(Site.mac(9));
        Map<Long, Attachment> places = new Site()
                .bridge(2)
                .point(9)
                .point(10)
                .hears(2, 4, Site.announced(4, id, 3, id, "ap-10", List.of()), Site.FIRST, 0)
                .places();
        on(places.get(9L), 2, 4, How.LLDP);
        assertThat(places.get(9L).notes()).hasSize(1);
        assertThat(places.get(10L).known()).isFalse();
        assertThat(places.get(10L).notes()).hasSize(1);
    }

    /** Every bridge learns the access point; only one does so on an edge port. */
    @Test
    void withoutLldpTheEdgePortTells() {
        Map<Long, Attachment> places = new Site()
                .gateway(1)
                .bridge(2)
                .bridge(3)
                .point(9)
                .learns(2, 24, 1)
                .learns(2, 5, 3, 9)
                .learns(3, 24, 1, 2)
                .learns(3, 7, 9)
                .addresses(3, 7, 41)
                .places();
        on(places.get(9L), 3, 7, How.FORWARDING);
        assertThat(places.get(9L).reason()).contains("an edge port");
        on(places.get(3L), 2, 5, How.FORWARDING);
    }

    @Test
    void anUplinkNeverCounts() {
        Attachment place = new Site()
                .gateway(1)
                .bridge(3)
                .point(9)
                .learns(3, 24, 1, 9)
                .places()
                .get(9L);
        assertThat(place.known()).isFalse();
        assertThat(place.notes()).anyMatch(note -> note.contains("it leads to a switch or gateway"));
    }

    @Test
    void aPortThatLldpShowsASwitchOnIsNoEdgePort() {
        Attachment place = new Site()
                .bridge(3)
                .bridge(4)
                .point(9)
                .hears(3, 7, 4)
                .learns(3, 7, 9)
                .places()
                .get(9L);
        assertThat(place.known()).isFalse();
    }

    @Test
    void aPortWithManyAddressesIsNoEdgePort() {
        Attachment place = new Site()
                .bridge(3)
                .point(9)
                .learns(3, 7, 9)
                .addresses(3, 7, 65)
                .places()
                .get(9L);
        assertThat(place.known()).isFalse();
        assertThat(place.notes()).anyMatch(note -> note.contains("65 addresses are too many"));
    }

    @Test
    void twoEdgePortsDecideNothing() {
        Attachment place = new Site()
                .bridge(3)
                .bridge(4)
                .point(9)
                .learns(3, 7, 9)
                .learns(4, 2, 9)
                .places()
                .get(9L);
        assertThat(place.known()).isFalse();
        assertThat(place.notes()).anyMatch(note -> note.contains("several edge ports"));
    }

    @Test
    void lldpBeatsTheForwardingTableAndTheContradictionShows() {
        Attachment place = new Site()
                .bridge(3)
                .bridge(4)
                .point(9)
                .hears(3, 7, 9)
                .learns(4, 2, 9)
                .places()
                .get(9L);
        on(place, 3, 7, How.LLDP);
        assertThat(place.notes()).anyMatch(note -> note.startsWith("Also: Forwarding table: sw-4"));
    }

    @Test
    void aPersonsWordHoldsAndWhatDisagreesShows() {
        Attachment place = new Site()
                .bridge(3)
                .point(9)
                .hears(3, 7, 9)
                .said(9, 3, 8)
                .places()
                .get(9L);
        on(place, 3, 8, How.PERSON);
        assertThat(place.reason()).isEqualTo("Set by edda");
        assertThat(place.notes()).anyMatch(note -> note.startsWith("Does not fit what was set: LLDP"));
    }

    @Test
    void aPersonsWordOfASwitchTurnsItsBranchRound() {
        Map<Long, Attachment> places = new Site()
                .gateway(1)
                .bridge(2)
                .bridge(3)
                .cable(1, 1, 2, 24)
                .cable(1, 2, 3, 24)
                .said(3, 2, 5)
                .places();
        on(places.get(3L), 2, 5, How.PERSON);
        on(places.get(2L), 1, 1, How.LLDP);
    }

    @Test
    void wordsInACircleAreToldAndDoNotCloseIt() {
        Map<Long, Attachment> places =
                new Site().bridge(2).bridge(3).said(2, 3, 1).said(3, 2, 1).places();
        assertThat(places.values().stream().filter(Attachment::known)).hasSize(1);
        assertThat(places.values().stream().filter(place -> !place.known()))
                .allSatisfy(place -> assertThat(place.notes()).anyMatch(note -> note.contains("circle")));
    }

    /** A ring of three switches: each has one device above it, the spare link is shown. */
    @Test
    void aRingBecomesATreeWithASpareLink() {
        Map<Long, Attachment> places = new Site()
                .gateway(1)
                .bridge(2)
                .bridge(3)
                .bridge(4)
                .cable(1, 1, 2, 24)
                .cable(2, 1, 3, 24)
                .cable(2, 2, 4, 24)
                .cable(3, 1, 4, 23)
                .places();
        on(places.get(3L), 2, 1, How.LLDP);
        on(places.get(4L), 2, 2, How.LLDP);
        assertThat(places.get(4L).notes()).anyMatch(note -> note.contains("sw-3 hears it on port 1"));
    }

    /** The access point died: the switch dropped the neighbour, and the last known place stays, marked. */
    @Test
    void whatIsNotSeenAnyMoreStaysAndIsCalledOld() {
        Attachment soon = new Site()
                .bridge(3)
                .point(9)
                .hears(3, 7, 9, Site.FIRST, 2)
                .places()
                .get(9L);
        Attachment later = new Site()
                .bridge(3)
                .point(9)
                .hears(3, 7, 9, Site.FIRST, 3)
                .places()
                .get(9L);
        on(soon, 3, 7, How.LLDP);
        on(later, 3, 7, How.LLDP);
        assertThat(soon.old()).isFalse();
        assertThat(later.old()).isTrue();
    }

    @Test
    void freshEvidenceOfAWeakerKindReplacesOldLldp() {
        Attachment place = new Site()
                .bridge(3)
                .bridge(4)
                .point(9)
                .hears(3, 7, 9, Site.FIRST, 1)
                .learns(4, 2, 9)
                .places()
                .get(9L);
        on(place, 4, 2, How.FORWARDING);
    }

    /** It was moved; the switch that it left has not been read again yet. */
    @Test
    void ofTwoThatHearItTheNewerTellsWhereItWasMoved() {
        Attachment place = new Site()
                .bridge(3)
                .bridge(4)
                .point(9)
                .hears(3, 7, 9)
                .hears(4, 2, 9, Site.FIRST.plus(Duration.ofHours(3)), 0)
                .places()
                .get(9L);
        on(place, 4, 2, How.LLDP);
        assertThat(place.notes()).anyMatch(note -> note.contains("sw-3 hears it on port 7"));
    }

    /** Without a gateway that is known, the switch with most others is the top. */
    @Test
    void aSiteWithoutAGatewayBeginsAtItsMainSwitch() {
        Map<Long, Attachment> places = new Site()
                .bridge(2)
                .bridge(3)
                .bridge(4)
                .point(9)
                .cable(3, 1, 2, 24)
                .cable(3, 2, 4, 24)
                .hears(4, 7, 9)
                .places();
        assertThat(places.get(3L).known()).isFalse();
        on(places.get(2L), 3, 1, How.LLDP);
        on(places.get(4L), 3, 2, How.LLDP);
        on(places.get(9L), 4, 7, How.LLDP);
    }

    @Test
    void anAccessPointBehindAnotherHangsOnIt() {
        Map<Long, Attachment> places = new Site()
                .bridge(3)
                .point(9)
                .point(10)
                .hears(3, 7, 9)
                .cable(9, 2, 10, 1)
                .places();
        on(places.get(9L), 3, 7, How.LLDP);
        on(places.get(10L), 9, 2, How.LLDP);
    }

    @Test
    void aLoopBackToItselfIsTold() {
        Attachment place = new Site().bridge(3).hears(3, 7, 3).places().get(3L);
        assertThat(place.known()).isFalse();
        assertThat(place.notes()).anyMatch(note -> note.contains("hears itself on port 7"));
    }

    /** Two devices that claim one address: it belongs to neither. */
    @Test
    void anAddressThatTwoClaimDecidesNothing() {
        Site site = new Site().bridge(3).point(9).point(10).learns(3, 7, 9);
        Evidence evidence = site.evidence();
        List<Member> members = evidence.members().stream()
                .map(m -> m.id() != 10
                        ? m
                        : new Member(
                                m.id(),
                                m.kind(),
                                m.name(),
                                m.host(),
                                m.systemName(),
                                m.chassis(),
                                java.util.Set.of(Site.mac(9), Site.mac(10)),
                                m.ports()))
                .toList();
        Map<Long, Attachment> places = Finding.places(
                new Evidence(members, evidence.neighbours(), evidence.learnt(), evidence.words(), 3, 64));
        assertThat(places.get(9L).known()).isFalse();
        assertThat(places.get(10L).known()).isFalse();
    }
}
