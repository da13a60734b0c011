package org.roundsman.snmp.walk;

import java.util.Locale;
import org.roundsman.snmp.Walk;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.IpAddress;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.Opaque;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.UnsignedInteger32;
import org.snmp4j.smi.Variable;

/** Prints a walk in the form of net-snmp's snmpbulkwalk -On, without any MIB module loaded. */
public final class WalkPrinter {

    private static final int HEX_IN_LINE = 16;

    private WalkPrinter() {}

    public static String print(Walk walk) {
        StringBuilder text = new StringBuilder(walk.size() * 56);
        for (int i = 0; i < walk.size(); i++) {
            text.append('.').append(walk.oid(i).toDottedString()).append(" = ");
            value(text, walk.value(i));
            text.append('\n');
        }
        return text.toString();
    }

    private static void value(StringBuilder text, Variable value) {
        if (value instanceof Opaque opaque) {
            text.append("Opaque: ");
            hex(text, opaque.getValue());
        } else if (value instanceof OctetString octets) {
            octets(text, octets.getValue());
        } else if (value instanceof OID oid) {
            text.append("OID: .").append(oid.toDottedString());
        } else if (value instanceof TimeTicks ticks) {
            text.append("Timeticks: ").append(ticks(ticks.getValue()));
        } else if (value instanceof Counter32) {
            text.append("Counter32: ").append(value.toLong());
        } else if (value instanceof UnsignedInteger32) {
            text.append("Gauge32: ").append(value.toLong());
        } else if (value instanceof Integer32) {
            text.append("INTEGER: ").append(value.toInt());
        } else if (value instanceof Counter64 counter) {
            text.append("Counter64: ").append(Long.toUnsignedString(counter.getValue()));
        } else if (value instanceof IpAddress) {
            text.append("IpAddress: ").append(value);
        } else {
            text.append("NULL");
        }
    }

    private static String ticks(long ticks) {
        long days = ticks / 8_640_000;
        long rest = ticks % 8_640_000;
        String clock = String.format(
                Locale.ROOT, "%d:%02d:%02d.%02d", rest / 360_000, rest / 6_000 % 60, rest / 100 % 60, rest % 100);
        String before = days == 0 ? "" : days + (days == 1 ? " day, " : " days, ");
        return "(" + ticks + ") " + before + clock;
    }

    private static void octets(StringBuilder text, byte[] octets) {
        if (octets.length == 0) {
            text.append("\"\"");
        } else if (isPrintable(octets)) {
            text.append("STRING: \"");
            for (byte octet : octets) {
                if (octet == '"' || octet == '\\') {
                    text.append('\\');
                }
                text.append((char) octet);
            }
            text.append('"');
        } else {
            text.append("Hex-STRING: ");
            hex(text, octets);
        }
    }

    /** As C's isprint or isspace has it, in ASCII; a final octet 0 is not printable. */
    private static boolean isPrintable(byte[] octets) {
        for (byte octet : octets) {
            boolean space = octet >= 9 && octet <= 13;
            if (!space && (octet < 32 || octet > 126)) {
                return false;
            }
        }
        return true;
    }

    private static void hex(StringBuilder text, byte[] octets) {
        for (int i = 0; i < octets.length; i++) {
            if (i > 0 && i % HEX_IN_LINE == 0) {
                text.append('\n');
            }
            text.append(String.format("%02X ", octets[i]));
        }
    }
}
