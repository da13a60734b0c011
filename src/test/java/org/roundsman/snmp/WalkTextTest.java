package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.IpAddress;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.Variable;

/**
 * Lines as net-snmp 5.9's snmpbulkwalk and snmpwalk printed them on Debian, with -On and with an invented MIB module loaded,
 * of values that snmpd's directive "pass" gave. Options are described in snmpcmd(1).
 */
class WalkTextTest {

    private static Variable value(String text) {
        WalkText read = WalkText.read(".1.3.6.1.4.1.32473.99.1.0 = " + text + "\n");
        assertThat(read.faults()).isEmpty();
        return read.walk().get(new OID("1.3.6.1.4.1.32473.99.1.0"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "INTEGER: -5|Integer32|-5",
                "INTEGER: up(1)|Integer32|1",
                "INTEGER: 5 seconds|Integer32|5",
                "INTEGER: -.5 dBm|Integer32|-5",
                "Integer32: 7|Integer32|7",
                "Gauge32: 4294967295|Gauge|4294967295",
                "Wrong Type (should be INTEGER): Gauge32: 4294967295|Gauge|4294967295",
                "Counter32: 531365154|Counter|531365154",
                "Counter64: 18446744073709551615|Counter64|18446744073709551615",
                "OID: .1.3.6.1.4.1.8072.3.2.10|OBJECT IDENTIFIER|1.3.6.1.4.1.8072.3.2.10",
                "OID: iso.3.6.1|OBJECT IDENTIFIER|1.3.6.1",
                "IpAddress: 10.1.2.3|IpAddress|10.1.2.3",
                "Network Address: 0A:01:02:03|IpAddress|10.1.2.3",
            })
    void oneLineValues(String text, String syntax, String shown) {
        assertThat(value(text).toString()).isEqualTo(shown);
        assertThat(value(text).getSyntaxString()).startsWith(syntax);
    }

    @Test
    void times() {
        assertThat(value("Timeticks: (123456789) 14 days, 6:56:07.89")).isEqualTo(new TimeTicks(123_456_789));
        assertThat(value("163")).as("-Ot").isEqualTo(new TimeTicks(163));
    }

    @Test
    void texts() {
        assertThat(value("\"\"")).isEqualTo(new OctetString());
        assertThat(value("STRING: \"a \\\"quoted\\\" line with back\\\\slash\""))
                .isEqualTo(new OctetString("a \"quoted\" line with back\\slash"));
        assertThat(value("STRING: \"one\n"
                        + "two \\\"q\\\" \\\\ three\n\n"
                        + ".1.3.6.1 = STRING: \\\"fake\\\"\n"
                        + "four\ttab\r\n"
                        + "five\""))
                .isEqualTo(
                        new OctetString("one\ntwo \"q\" \\ three\n\n.1.3.6.1 = STRING: \"fake\"\nfour\ttab\r\nfive"));
        assertThat(value("STRING: hello")).as("with a MIB module").isEqualTo(new OctetString("hello"));
    }

    @Test
    void octets() {
        assertThat(value("Hex-STRING: 61 20 22 71 75 6F 74 65 64 22 20 6C 69 6E 65 20 \n77 69 74 68 "))
                .isEqualTo(new OctetString("a \"quoted\" line with"));
        assertThat(value("STRING: 2:fc:0:0:0:1")).isEqualTo(OctetString.fromHexString("02:fc:00:00:00:01"));
        assertThat(value("STRING: 2026-11-25,21:44:4.0,+0:0"))
                .isEqualTo(OctetString.fromHexString("07:ea:0b:19:15:2c:04:00:2b:00:00"));
        assertThat(value("BITS: C0 00 one(0) two(1) ")).isEqualTo(OctetString.fromHexString("c0:00"));
        // The same octets that snmpd's pass directive was given: 9f 78 04 3f c0 00 00.
        assertThat(((OctetString) value("Opaque: Float: 1.500000")).getValue())
                .containsExactly(0x9f, 0x78, 4, 0x3f, 0xc0, 0, 0);
    }

    @Test
    void whatHasNoValueIsLeftOutAndSaid() {
        WalkText read = WalkText.read("""
            .1.3.6.1.2.1.1.1.1 = No Such Instance currently exists at this OID
            .1.3.6.1.4.1.32473.98.8 = No Such Object available on this agent at this OID
            iso.3.6.1.2.1.1.5.0 = STRING: "snmpd-under-test"
            .1.3.6.1.6.3.16.1 = No more variables left in this MIB View (It is past the end of the MIB tree)
            Variables found: 1
            End of MIB
            """);
        assertThat(read.faults()).isEmpty();
        assertThat(read.walk().size()).isEqualTo(1);
        assertThat(read.remarks()).singleElement().asString().startsWith("3 variables are without a value");
    }

    @Test
    void faultyLinesAreNamedWithTheirReasonAndTheRestIsRead() {
        WalkText read = WalkText.read("""
            .1.3.6.1.2.1.1.3.0 = Timeticks: (5) 0:00:00.05
            SNMPv2-MIB::sysName.0 = STRING: x
            .1.3.6.1.2.1.1.7.0 = INTEGER: lots
            .1.3.6.1.2.1.1.8.0 = Counter32: 4294967296
            .1.3.6.1.2.1.1.9.0 = Marble: 5
            .1.3.6.1.99999999999.0 = INTEGER: 5
            .1.3.6.1.2.1.1.5.0 = STRING: "never closed
            .1.3.6.1.2.1.1.6.0 = INTEGER: 6
            """);
        assertThat(read.faults()).extracting(WalkText.LineFault::line).containsExactly(2, 3, 4, 5, 6, 7);
        assertThat(read.faults().get(0).reason()).contains("-On");
        assertThat(read.faults().get(4).reason()).contains("no variable begins here");
        assertThat(read.faults().get(5).reason()).contains("closing quote");
        assertThat(read.walk().size()).isEqualTo(2);
    }

    @Test
    void whatIsOutOfOrderOrTwiceIsSortedAndSaid() {
        WalkText read = WalkText.read(".1.3.2 = INTEGER: 2\r\n.1.3.1 = INTEGER: 1\r\n.1.3.2 = INTEGER: 3\r\n");
        assertThat(read.walk().oid(0)).isEqualTo(new OID("1.3.1"));
        assertThat(read.walk().get(new OID("1.3.2"))).isEqualTo(new Integer32(3));
        assertThat(read.remarks()).hasSize(2);
    }

    @Test
    void whatIsTooLongIsRefused() {
        assertThat(WalkText.read("x".repeat(WalkText.LONGEST + 1)).faults()).hasSize(1);
        assertThat(WalkText.read(".1.3.1 = 5\n.1.3.2 = 6\n").faults())
                .as("-OQ prints no types")
                .hasSize(1);
    }

    /** Whatever is printed in net-snmp's form is read again, also where browsers make CR LF of each line end. */
    @Property(tries = 300)
    void whatIsPrintedIsReadAgain(@ForAll("walks") Map<OID, Variable> variables) {
        Walk walk = new Walk(new TreeMap<>(variables));
        WalkText read = WalkText.read(walk.text());
        assertThat(read.faults()).isEmpty();
        assertThat(read.remarks()).isEmpty();
        assertThat(read.walk().size()).isEqualTo(walk.size());
        for (int i = 0; i < walk.size(); i++) {
            assertThat(read.walk().oid(i)).isEqualTo(walk.oid(i));
            assertThat(read.walk().value(i)).isEqualTo(walk.value(i));
        }
    }

    @Provide
    Arbitrary<Map<OID, Variable>> walks() {
        Arbitrary<OID> oids = Arbitraries.integers()
                .greaterOrEqual(0)
                .list()
                .ofMinSize(1)
                .ofMaxSize(12)
                .map(rest -> new OID("1.3.6")
                        .append(new OID(
                                rest.stream().mapToInt(Integer::intValue).toArray())));
        Arbitrary<Long> unsigned = Arbitraries.longs().between(0, 4_294_967_295L);
        Arbitrary<Variable> values = Arbitraries.oneOf(List.of(
                Arbitraries.integers().map(Integer32::new),
                unsigned.map(Gauge32::new),
                unsigned.map(Counter32::new),
                unsigned.map(TimeTicks::new),
                Arbitraries.longs().map(Counter64::new),
                Arbitraries.bytes().array(byte[].class).ofMaxSize(40).map(OctetString::new),
                Arbitraries.strings()
                        .withCharRange(' ', '~')
                        .withChars('\n', '\t', '"', '\\')
                        .map(OctetString::new),
                Arbitraries.bytes().array(byte[].class).ofSize(4).map(IpAddress::new),
                oids.map(Variable.class::cast)));
        return Combinators.combine(oids, values)
                .as(Map::entry)
                .list()
                .ofMaxSize(20)
                .map(entries -> {
                    Map<OID, Variable> all = new TreeMap<>();
                    entries.forEach(e -> all.put(e.getKey(), e.getValue()));
                    return all;
                });
    }
}
