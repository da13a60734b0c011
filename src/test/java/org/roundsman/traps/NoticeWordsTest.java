package org.roundsman.traps;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.snmp.NamedNotification;
import org.roundsman.snmp.Notification;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.RawAnswer;

/** OIDs of notifications from SNMPv2-MIB (RFC 3418), of interfaces from IF-MIB (RFC 2863). */
class NoticeWordsTest {

    private static final NoticeWords WORDS = new NoticeWords(ProfileSet.load(List.of())::notification);

    private static Notification notification(String oid, RawAnswer... variables) {
        return new Notification(1, 2, false, oid, InetAddress.getLoopbackAddress(), List.of(variables));
    }

    private static RawAnswer variable(String oid, String value) {
        return new RawAnswer(oid, "", "", value);
    }

    private static NoticeTitle named(Notification notification) {
        return NoticeWords.title(WORDS.name(notification.oid()).orElseThrow(), notification);
    }

    private static String title(Notification notification) {
        return named(notification).text();
    }

    private static String detail(Notification notification) {
        return NoticeWords.detail(WORDS.name(notification.oid()).orElseThrow(), notification);
    }

    @ParameterizedTest
    @CsvSource({
        "1.3.6.1.6.3.1.1.5.1,Cold start",
        "1.3.6.1.6.3.1.1.5.2,Warm start",
        "1.3.6.1.6.3.1.1.5.3,Link down",
        "1.3.6.1.6.3.1.1.5.4,Link up",
        "1.3.6.1.6.3.1.1.5.5,Authentication failure",
        "1.3.6.1.4.1.32473.3.0.1,'Radar seen, channel changed'",
        "1.3.6.1.4.1.32473.3.0.2,Fan fault"
    })
    void standardAndShippedNamesAreKnown(String oid, String title) {
        assertThat(title(notification(oid))).isEqualTo(title);
    }

    @Test
    void whatNobodyNamesHasNoName() {
        assertThat(WORDS.name("1.3.6.1.6.3.1.1.5.6")).isEmpty();
        assertThat(WORDS.name("1.3.6.1.4.1.32473.99.0.1")).isEmpty();
    }

    @Test
    void linksNameTheirInterfaceAsFarAsTheySay() {
        RawAnswer index = variable("1.3.6.1.2.1.2.2.1.1.2", "2");
        RawAnswer state = variable("1.3.6.1.2.1.2.2.1.8.2", "2");
        RawAnswer description = variable("1.3.6.1.2.1.2.2.1.2.2", "Ethernet port two");
        RawAnswer name = variable("1.3.6.1.2.1.31.1.1.1.1.2", "eth1");
        assertThat(title(notification(NoticeWords.LINK_DOWN, index, state))).isEqualTo("Link down: interface 2");
        assertThat(title(notification(NoticeWords.LINK_DOWN, state))).isEqualTo("Link down: interface 2");
        assertThat(title(notification(NoticeWords.LINK_DOWN, index, description)))
                .isEqualTo("Link down: interface Ethernet port two (2)");
        assertThat(title(notification(NoticeWords.LINK_DOWN, index, description, name)))
                .isEqualTo("Link down: interface eth1 (2)");
        assertThat(detail(notification(NoticeWords.LINK_DOWN, index, state)))
                .contains("state: down")
                .contains("1.3.6.1.2.1.2.2.1.1.2 = 2");
    }

    @Test
    void thePortsNameStandsInPlaceOfTheNumberThatNobodyKnows() {
        RawAnswer index = variable("1.3.6.1.2.1.2.2.1.1.10013", "10013");
        RawAnswer state = variable("1.3.6.1.2.1.2.2.1.8.10013", "2");
        RawAnswer description = variable("1.3.6.1.2.1.2.2.1.2.10013", "Slot 0 Port 13");
        Map<Integer, String> ports = Map.of(10_013, "port 13 (garden-ap-09)");
        for (Notification down : List.of(
                notification(NoticeWords.LINK_DOWN, index, state),
                notification(NoticeWords.LINK_DOWN, state),
                notification(NoticeWords.LINK_DOWN, index, description))) {
            assertThat(named(down).with(ports)).isEqualTo("Link down: port 13 (garden-ap-09)");
        }
        assertThat(named(notification(NoticeWords.LINK_UP, index)).with(ports))
                .isEqualTo("Link up: port 13 (garden-ap-09)");
        assertThat(named(notification(NoticeWords.LINK_DOWN, index)).with(Map.of(24, "port 24")))
                .isEqualTo("Link down: interface 10013");
        assertThat(named(notification(NoticeWords.LINK_DOWN)).with(ports)).isEqualTo("Link down");
    }

    /** InterfaceIndex goes from 1 to 2147483647 (RFC 2863). */
    @ParameterizedTest
    @ValueSource(strings = {"0", "-3", "2147483648", "99999999999999999999", "eth1", "1.5"})
    void whatIsNoInterfaceNumberNamesNoPort(String value) {
        NoticeTitle title = named(notification(NoticeWords.LINK_DOWN, variable("1.3.6.1.2.1.2.2.1.1.2", value)));
        assertThat(title.port()).isEmpty();
        assertThat(title.text()).isEqualTo("Link down: interface " + value);
    }

    @Test
    void aProfileShowsVariablesUnderANameAndMayRenameStandardOnes() {
        NamedNotification fault = new NamedNotification(
                NoticeWords.LINK_UP, "Port came up", List.of(new NamedNotification.Shown("speed", "1.3.6.1.9")));
        NoticeWords words = new NoticeWords(oid -> oid.equals(fault.oid()) ? Optional.of(fault) : Optional.empty());
        Notification up = notification(
                NoticeWords.LINK_UP, variable("1.3.6.1.9.4", "1000"), variable("1.3.6.1.99", "not this one"));
        assertThat(words.name(NoticeWords.LINK_UP)).contains(fault);
        assertThat(NoticeWords.detail(fault, up)).contains("speed: 1000").contains("1.3.6.1.99 = not this one");
    }

    @Test
    void whateverItCarriesTheTextIsBounded() {
        RawAnswer[] many = IntStream.range(0, 500)
                .mapToObj(i -> variable("1.3.6.1.9." + i, "x".repeat(60_000)))
                .toArray(RawAnswer[]::new);
        assertThat(detail(notification("1.3.6.1.6.3.1.1.5.1", many)))
                .hasSizeLessThan(8_000)
                .contains("and 480 more variables");
    }
}
