package org.roundsman.snmp.walk;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.roundsman.snmp.walk.ValueText.Unreadable;
import org.snmp4j.smi.Opaque;
import org.snmp4j.smi.Variable;

/** Reads octets as net-snmp prints them: quoted text, text by a display hint, hexadecimal digits. */
final class OctetsText {

    private static final int LONGEST = 1 << 20;
    private static final Pattern HEX_LINE = Pattern.compile("(?:[0-9A-Fa-f]{2}(?: +|$))*(?:\\[.*)?");
    private static final Pattern HEX_PAIR = Pattern.compile("[0-9A-Fa-f]{2}");
    /** How the display hint 1x: of PhysAddress and MacAddress prints six octets. */
    private static final Pattern HINTED_MAC = Pattern.compile("[0-9a-fA-F]{1,2}(?::[0-9a-fA-F]{1,2}){5}");
    /** How the display hint of DateAndTime (RFC 2579) prints its 8 or 11 octets. */
    private static final Pattern HINTED_TIME =
            Pattern.compile("(\\d+)-(\\d+)-(\\d+),(\\d+):(\\d+):(\\d+)\\.(\\d+)(?:,([+-])(\\d+):(\\d+))?");

    private OctetsText() {}

    static byte[] string(String first, TextLines lines) {
        return first.startsWith("\"") ? quoted(first, lines) : unquoted(first, lines);
    }

    private static byte[] quoted(String first, TextLines lines) {
        TextLines.Mark mark = lines.mark();
        StringBuilder text = new StringBuilder();
        String line = first.substring(1);
        while (true) {
            int end = unescape(line, text);
            if (end >= 0) {
                if (!line.substring(end + 1).isBlank()) {
                    throw new Unreadable("something follows the closing quote: " + ValueText.cut(line.substring(end)));
                }
                return ValueText.utf8(text.toString());
            }
            if (!lines.hasNext() || text.length() > LONGEST) {
                lines.back(mark);
                throw new Unreadable("the closing quote is missing");
            }
            text.append('\n');
            line = lines.next();
        }
    }

    /** Appends what stands before the closing quote; returns where that is, or -1. */
    private static int unescape(String line, StringBuilder text) {
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            char next = i + 1 < line.length() ? line.charAt(i + 1) : 0;
            if (c == '"') {
                return i;
            }
            if (c == '\\' && (next == '"' || next == '\\')) {
                text.append(next);
                i++;
            } else {
                text.append(c);
            }
        }
        return -1;
    }

    /** With MIB modules loaded, texts stand without quotes and end where the next variable begins. */
    private static byte[] unquoted(String first, TextLines lines) {
        StringBuilder text = new StringBuilder(first);
        while (lines.hasNext() && !WalkParser.beginsVariable(lines.peek()) && text.length() < LONGEST) {
            text.append('\n').append(lines.next());
        }
        String whole = text.toString();
        if (HINTED_MAC.matcher(whole.strip()).matches()) {
            return colons(whole, 6);
        }
        Matcher time = HINTED_TIME.matcher(whole.strip());
        return time.matches() ? time(time) : ValueText.utf8(whole);
    }

    private static byte[] time(Matcher time) {
        boolean zoned = time.group(8) != null;
        ByteBuffer octets = ByteBuffer.allocate(zoned ? 11 : 8);
        octets.putShort((short) Integer.parseInt(time.group(1)));
        for (int i = 2; i <= 7; i++) {
            octets.put((byte) Integer.parseInt(time.group(i)));
        }
        if (zoned) {
            octets.put((byte) time.group(8).charAt(0));
            octets.put((byte) Integer.parseInt(time.group(9))).put((byte) Integer.parseInt(time.group(10)));
        }
        return octets.array();
    }

    /** So many octets in hexadecimal digits with colons between. */
    static byte[] colons(String text, int count) {
        String[] parts = text.strip().split(":");
        if (parts.length != count) {
            throw new Unreadable(count + " octets with colons between are wanted, not " + ValueText.cut(text));
        }
        byte[] octets = new byte[count];
        for (int i = 0; i < count; i++) {
            octets[i] = (byte) Integer.parseInt(parts[i], 16);
        }
        return octets;
    }

    static byte[] hex(String first, TextLines lines) {
        StringBuilder digits = new StringBuilder(hexLine(first));
        while (lines.hasNext()
                && !lines.peek().isBlank()
                && HEX_LINE.matcher(lines.peek().strip()).matches()
                && digits.length() < LONGEST) {
            digits.append(' ').append(hexLine(lines.next()));
        }
        return pairs(digits.toString());
    }

    /** One line without the readable form that -OT adds in brackets. */
    private static String hexLine(String line) {
        String digits = line.strip();
        if (!HEX_LINE.matcher(digits).matches()) {
            throw new Unreadable("pairs of hexadecimal digits are wanted, not " + ValueText.cut(line));
        }
        int readable = digits.indexOf('[');
        return readable < 0 ? digits : digits.substring(0, readable);
    }

    /** Octets, followed by the names of the bits where a MIB module is loaded. */
    static byte[] bits(String first, TextLines lines) {
        StringBuilder digits = new StringBuilder();
        StringBuilder text = new StringBuilder(first);
        while (lines.hasNext() && !WalkParser.beginsVariable(lines.peek()) && text.length() < LONGEST) {
            text.append(' ').append(lines.next());
        }
        for (String word : text.toString().strip().split("\\s+")) {
            if (!HEX_PAIR.matcher(word).matches()) {
                break;
            }
            digits.append(word).append(' ');
        }
        return pairs(digits.toString());
    }

    private static byte[] pairs(String digits) {
        ByteArrayOutputStream octets = new ByteArrayOutputStream();
        for (String pair : digits.strip().split("\\s+")) {
            if (!pair.isEmpty()) {
                octets.write(Integer.parseInt(pair, 16));
            }
        }
        return octets.toByteArray();
    }

    /** Floats and doubles in the wrapping that net-snmp itself uses, or plain octets. */
    static Variable opaque(String text, TextLines lines) {
        String[] parts = text.split(": ", 2);
        return switch (parts[0]) {
            case "Float" -> wrapped(0x78, ByteBuffer.allocate(4).putFloat(Float.parseFloat(parts[1].split(" ")[0])));
            case "Double" ->
                wrapped(0x79, ByteBuffer.allocate(8).putDouble(Double.parseDouble(parts[1].split(" ")[0])));
            default -> new Opaque(hex(text, lines));
        };
    }

    private static Variable wrapped(int tag, ByteBuffer number) {
        ByteBuffer octets = ByteBuffer.allocate(3 + number.capacity());
        octets.put((byte) 0x9f).put((byte) tag).put((byte) number.capacity()).put(number.array());
        return new Opaque(octets.array());
    }
}
