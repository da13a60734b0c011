package org.roundsman.snmp.decode;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.Variable;

/** Texts from what devices send. */
public final class Texts {

    private static final int LONGEST = 512;
    private static final int MAC_OCTETS = 6;

    private Texts() {}

    /** A value as text: octets by {@link #of(byte[])}, everything else as it prints; cut at 512 characters. */
    public static String of(Variable value) {
        String text = value instanceof OctetString octets ? of(octets.getValue()) : value.toString();
        return text.length() > LONGEST ? text.substring(0, LONGEST) + "\u2026" : text;
    }

    /** UTF-8 as text; octets that are not UTF-8, and control characters, as {@code \xHH}. */
    public static String of(byte[] octets) {
        StringBuilder text = new StringBuilder(octets.length);
        for (int at = 0; at < octets.length; ) {
            int length = Math.min(lengthOf(octets[at]), octets.length - at);
            String character = length == 0 ? null : decode(octets, at, length);
            if (character == null || Character.isISOControl(character.codePointAt(0))) {
                int shown = character == null ? 1 : length;
                for (int i = at; i < at + shown; i++) {
                    text.append(String.format("\\x%02X", octets[i]));
                }
                at += shown;
            } else {
                text.append(character);
                at += length;
            }
        }
        return text.toString();
    }

    /** How many octets a UTF-8 character takes by its first one; 0 when none begins so (RFC 3629). */
    private static int lengthOf(byte first) {
        int octet = first & 0xff;
        if (octet < 0x80) {
            return 1;
        }
        if (octet < 0xc2 || octet > 0xf4) {
            return 0;
        }
        return octet < 0xe0 ? 2 : octet < 0xf0 ? 3 : 4;
    }

    private static String decode(byte[] octets, int at, int length) {
        if (length == 1 && octets[at] >= 0) {
            return String.valueOf((char) octets[at]);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(octets, at, length))
                    .toString();
        } catch (CharacterCodingException e) {
            return null;
        }
    }

    /** Six octets in the form 00:00:5e:00:53:01; empty for anything else, and for all zeros. */
    public static String mac(Variable value) {
        if (!(value instanceof OctetString octets) || octets.length() != MAC_OCTETS) {
            return "";
        }
        String text = HexFormat.ofDelimiter(":").formatHex(octets.getValue());
        return text.equals("00:00:00:00:00:00") ? "" : text;
    }

    /** Octets as hexadecimal digits; anything else as it prints. */
    public static String hex(Variable value) {
        return value instanceof OctetString octets ? HexFormat.of().formatHex(octets.getValue()) : value.toString();
    }
}
