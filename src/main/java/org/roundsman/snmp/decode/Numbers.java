package org.roundsman.snmp.decode;

import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.SMIConstants;
import org.snmp4j.smi.UnsignedInteger32;
import org.snmp4j.smi.Variable;

/** Numbers from what devices send. */
public final class Numbers {

    private static final double TWO_TO_64 = 18_446_744_073_709_551_616.0;

    private Numbers() {}

    /** The number, also when it comes as digits in an octet string; NaN when it is none. */
    public static double of(Variable value) {
        if (value instanceof Integer32 || value instanceof UnsignedInteger32) {
            return value.toLong();
        }
        if (value instanceof Counter64 counter) {
            long number = counter.getValue();
            return number >= 0 ? number : number + TWO_TO_64;
        }
        return value instanceof OctetString octets ? digits(octets) : Double.NaN;
    }

    private static double digits(OctetString octets) {
        String text = new String(octets.getValue(), java.nio.charset.StandardCharsets.ISO_8859_1).strip();
        return text.matches("[+-]?[0-9]{1,15}(\\.[0-9]{1,9})?") ? Double.parseDouble(text) : Double.NaN;
    }

    /** Width of a counter by its type: 64 for Counter64, else 32. */
    public static int bits(Variable value) {
        return value.getSyntax() == SMIConstants.SYNTAX_COUNTER64 ? 64 : 32;
    }

    /** Whether it is a number of at most 64 bits that may be a counter. */
    public static boolean isWhole(Variable value) {
        return value instanceof Integer32 || value instanceof UnsignedInteger32 || value instanceof Counter64;
    }

    /** 0 to 255 as 0 to 100 %; NaN outside. The BSS Load element of IEEE 802.11. */
    public static double bssLoad(double raw) {
        return raw >= 0 && raw <= 255 ? raw * 100 / 255 : Double.NaN;
    }

    /** A share in per cent; NaN when there is nothing to share or a part is negative. */
    public static double share(double part, double whole) {
        return whole > 0 && part >= 0 ? part * 100 / whole : Double.NaN;
    }
}
