package org.roundsman.snmp.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.Null;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;

class DecodeTest {

    private static final long NOW = Instant.parse("2026-11-25T09:30:00Z").toEpochMilli();

    /** 255 means that the medium was sensed busy all the time (BSS Load element, IEEE 802.11; from memory). */
    @ParameterizedTest
    @CsvSource({
        "0,0.00",
        "1,0.39",
        "2,0.78",
        "25,9.80",
        "26,10.20",
        "51,20.00",
        "64,25.10",
        "76,29.80",
        "77,30.20",
        "100,39.22",
        "127,49.80",
        "128,50.20",
        "178,69.80",
        "179,70.20",
        "191,74.90",
        "204,80.00",
        "229,89.80",
        "230,90.20",
        "254,99.61",
        "255,100.00"
    })
    void readsTheBssLoadScale(int raw, double percent) {
        assertThat(Numbers.bssLoad(raw)).isEqualTo(percent, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"-1", "256", "1000"})
    void refusesWhatIsOffTheBssLoadScale(int raw) {
        assertThat(Numbers.bssLoad(raw)).isNaN();
    }

    /** hrStorageUsed of hrStorageSize (RFC 2790), and retries of delivered frames (IEEE802dot11-MIB): by hand. */
    @ParameterizedTest
    @CsvSource({"49152,65536,75.0", "150,1000,15.0", "500,500,100.0", "0,200,0.0"})
    void givesSharesInPerCent(double part, double whole, double percent) {
        assertThat(Numbers.share(part, whole)).isEqualTo(percent);
    }

    @ParameterizedTest
    @CsvSource({"0,0", "5,-1", "-1,100"})
    void givesNoShareOfNothing(double part, double whole) {
        assertThat(Numbers.share(part, whole)).isNaN();
    }

    @Test
    void readsNumbersOfAllTypes() {
        assertThat(Numbers.of(new Integer32(-95))).isEqualTo(-95);
        assertThat(Numbers.of(new Gauge32(4_294_967_295L))).isEqualTo(4_294_967_295.0);
        assertThat(Numbers.of(new Counter32(7))).isEqualTo(7);
        assertThat(Numbers.of(new Counter64(-1))).isEqualTo(1.8446744073709552e19);
        assertThat(Numbers.of(new OctetString(" -95.5 "))).isEqualTo(-95.5);
        assertThat(Numbers.of(new OctetString("n/a"))).isNaN();
        assertThat(Numbers.of(new OID("1.3"))).isNaN();
        assertThat(Numbers.of(Null.noSuchObject)).isNaN();
    }

    @ParameterizedTest
    @CsvSource({
        "4b c3 b6 6c 6e,Köln",
        "41 ff 42,A\\xFFB",
        "c3 28,\\xC3(",
        "e2 82,\\xE2\\x82",
        "f0 9f 93 a1,📡",
        "c0 af,\\xC0\\xAF",
        "ed a0 80,\\xED\\xA0\\x80",
        "61 00 62,a\\x00b"
    })
    void showsOctetsThatAreNoText(String octets, String text) {
        byte[] raw = HexFormat.ofDelimiter(" ").parseHex(octets);
        assertThat(Texts.of(raw)).isEqualTo(text);
    }

    /** UTF-8 (RFC 3629) as the Java library reads it. */
    @Property
    void leavesTextAsItIs(@ForAll String any) {
        String text = any.codePoints()
                .filter(c -> !Character.isISOControl(c) && (c < 0xd800 || c > 0xdfff))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        assertThat(Texts.of(text.getBytes(StandardCharsets.UTF_8))).isEqualTo(text);
    }

    @Property
    void anyOctetsBecomeTextWithoutControlCharacters(@ForAll byte[] octets) {
        assertThat(Texts.of(octets).codePoints()).noneMatch(Character::isISOControl);
    }

    @Test
    void cutsWhatIsTooLong() {
        assertThat(Texts.of(new OctetString(new byte[60_000]))).hasSize(513).endsWith("\u2026");
    }

    @Test
    void writesAddresses() {
        assertThat(Texts.mac(new OctetString(new byte[] {0, 0, 0x5e, 0, 0x53, (byte) 0xff})))
                .isEqualTo("00:00:5e:00:53:ff");
        assertThat(Texts.mac(new OctetString(new byte[6]))).isEmpty();
        assertThat(Texts.mac(new OctetString("00:00:5e"))).isEmpty();
    }

    /** DateAndTime of RFC 2579; its own example: Tuesday May 26, 1992 at 1:30:15 PM EDT is 1992-5-26,13:30:15.0,-4:0. */
    @Test
    void readsTheExampleOfTheStandard() {
        byte[] octets = {0x07, (byte) 0xc8, 5, 26, 13, 30, 15, 0, '-', 4, 0};
        double offset = Clocks.offset(
                new OctetString(octets), Instant.parse("1992-05-26T17:30:15Z").toEpochMilli());
        assertThat(offset).isZero();
    }

    @Test
    void seesAClockIn1970() {
        byte[] octets = {0x07, (byte) 0xb2, 1, 1, 0, 12, 0, 0};
        assertThat(Clocks.offset(new OctetString(octets), NOW))
                .isEqualTo((Instant.parse("1970-01-01T00:12:00Z").toEpochMilli() - NOW) / 1e3);
    }

    @Test
    void cannotTellTheOffsetOfALocalTimeThatIsNear() {
        byte[] octets = {0x07, (byte) 0xea, 11, 25, 10, 30, 0, 0};
        assertThat(Clocks.offset(new OctetString(octets), NOW)).isNaN();
    }

    @ParameterizedTest
    @CsvSource({"07ea0d19091e0000", "07ea", "00", "07ea0b19ff1e00002b0000", "07ea0b19091e00002b7f00"})
    void refusesWhatIsNoTime(String hex) {
        assertThat(Clocks.offset(new OctetString(HexFormat.of().parseHex(hex)), NOW))
                .isNaN();
    }
}
