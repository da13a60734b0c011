package org.roundsman.snmp.walk;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.IpAddress;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.Variable;

/** Reads one value as net-snmp prints it: its type, a colon, and the rest, which may go on in the lines that follow. */
final class ValueText {

    private static final Pattern TYPED =
            Pattern.compile("([A-Z][A-Za-z0-9]*(?:[ -][A-Z][A-Za-z]*)?): ?(.*)", Pattern.DOTALL);
    private static final Pattern WRONG_TYPE = Pattern.compile("Wrong Type \\(should be [^)]*\\): ");
    private static final Pattern ABSENT =
            Pattern.compile("No Such (Object|Instance) .*|No more variables left .*|NULL");
    private static final Pattern NUMBER = Pattern.compile("(-?\\d+)(?: .*)?");
    private static final Pattern ENUMERATED = Pattern.compile("[\\w.+-]*\\((-?\\d+)\\)(?: .*)?");
    private static final Pattern DECIMAL = Pattern.compile("(-?\\d*)\\.(\\d+)(?: .*)?");
    private static final Pattern TICKS = Pattern.compile("\\((\\d+)\\).*|(\\d+)(?: .*)?");
    private static final Pattern IP = Pattern.compile("(\\d{1,3})\\.(\\d{1,3})\\.(\\d{1,3})\\.(\\d{1,3})");
    private static final long LARGEST_32 = 4_294_967_295L;

    private ValueText() {}

    /** How reading ended. */
    sealed interface Result permits Read, Absent, Wrong {}

    /** @param typed whether the type stood before it */
    record Read(Variable value, boolean typed) implements Result {}

    /** The device said that there is no value. */
    record Absent() implements Result {}

    record Wrong(String reason) implements Result {}

    /** Reads a value that begins with this text and may go on in those lines. */
    static Result read(String first, TextLines lines) {
        String text = WRONG_TYPE.matcher(first).replaceFirst("");
        if (text.strip().equals("\"\"")) {
            return new Read(new OctetString(), true);
        }
        if (ABSENT.matcher(text).matches()) {
            return new Absent();
        }
        Matcher typed = TYPED.matcher(text);
        if (typed.matches()) {
            return of(typed.group(1), typed.group(2), lines);
        }
        // With -Ot times alone come without their type.
        if (text.matches("\\d{1,10}") && Long.parseLong(text) <= LARGEST_32) {
            return new Read(new TimeTicks(Long.parseLong(text)), false);
        }
        return new Wrong("a type and a colon are wanted after the equals sign, such as INTEGER: 5; not " + cut(text));
    }

    private static Result of(String type, String rest, TextLines lines) {
        try {
            Variable value =
                    switch (type) {
                        case "INTEGER", "Integer32" -> new Integer32(Math.toIntExact(integer(rest)));
                        case "Gauge32", "Unsigned32", "UInteger32" -> new Gauge32(unsigned(rest));
                        case "Counter32" -> new Counter32(unsigned(rest));
                        case "Counter64" -> new Counter64(Long.parseUnsignedLong(digits(rest)));
                        case "Timeticks" -> new TimeTicks(ticks(rest));
                        case "OID" -> oid(rest);
                        case "IpAddress" -> ip(rest);
                        case "Network Address" -> new IpAddress(OctetsText.colons(rest, 4));
                        case "STRING" -> new OctetString(OctetsText.string(rest, lines));
                        case "Hex-STRING" -> new OctetString(OctetsText.hex(rest, lines));
                        case "BITS" -> new OctetString(OctetsText.bits(rest, lines));
                        case "Opaque" -> OctetsText.opaque(rest, lines);
                        default -> throw new Unreadable("there is no type " + type);
                    };
            return new Read(value, true);
        } catch (NumberFormatException | ArithmeticException e) {
            return new Wrong("the number does not fit " + type + ": " + cut(rest));
        } catch (Unreadable e) {
            return new Wrong(e.getMessage());
        }
    }

    /** A value that cannot be read; the message says what would be right. */
    static final class Unreadable extends RuntimeException {
        private static final long serialVersionUID = 1;

        Unreadable(String message) {
            super(message);
        }
    }

    private static String digits(String text) {
        Matcher number = NUMBER.matcher(text.strip());
        if (number.matches()) {
            return number.group(1);
        }
        Matcher enumerated = ENUMERATED.matcher(text.strip());
        if (enumerated.matches()) {
            return enumerated.group(1);
        }
        throw new Unreadable("a number is wanted, not " + cut(text));
    }

    /** With a MIB module that has a display hint such as d-2, the tools print 1234 as 12.34. */
    private static long integer(String text) {
        Matcher decimal = DECIMAL.matcher(text.strip());
        return Long.parseLong(decimal.matches() ? decimal.group(1) + decimal.group(2) : digits(text));
    }

    private static long unsigned(String text) {
        long number = integer(text);
        if (number < 0 || number > LARGEST_32) {
            throw new NumberFormatException();
        }
        return number;
    }

    private static long ticks(String text) {
        Matcher ticks = TICKS.matcher(text.strip());
        if (!ticks.matches()) {
            throw new Unreadable(
                    "hundredths of a second in brackets are wanted, such as (4711) 0:00:47.11, not " + cut(text));
        }
        return unsigned(ticks.group(1) == null ? ticks.group(2) : ticks.group(1));
    }

    private static Variable oid(String text) {
        String dotted = text.strip().replaceFirst("^\\.", "");
        OID oid = dotted.matches("(iso|[0-2])(\\.\\d{1,10})+") ? WalkParser.oid(dotted) : null;
        if (oid == null) {
            throw new Unreadable("an object identifier in numbers is wanted, such as .1.3.6.1.4.1.32473.1, not "
                    + cut(text) + "; print the walk with -On");
        }
        return oid;
    }

    private static Variable ip(String text) {
        Matcher ip = IP.matcher(text.strip());
        byte[] octets = new byte[4];
        for (int i = 0; i < 4; i++) {
            int octet = ip.matches() ? Integer.parseInt(ip.group(i + 1)) : 256;
            if (octet > 255) {
                throw new Unreadable("an IPv4 address is wanted, not " + cut(text));
            }
            octets[i] = (byte) octet;
        }
        return new IpAddress(octets);
    }

    static String cut(String text) {
        String line = text.lines().findFirst().orElse("");
        return line.length() > 60 ? line.substring(0, 60) + "…" : line;
    }

    static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
