package org.roundsman.fleet.transfer;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Turns octets into text without guessing: a byte order mark decides, without one a file is UTF-8. Only where somebody
 * said so, what is not valid UTF-8 is read as Windows-1252.
 */
final class Encodings {

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private Encodings() {}

    /** Text without its byte order mark, and the encoding in words. */
    record Decoded(String text, String encoding) {}

    static Decoded decode(byte[] octets, boolean elseWindows) throws Unreadable {
        if (begins(octets, 0xEF, 0xBB, 0xBF)) {
            return new Decoded(strict(octets, 3, StandardCharsets.UTF_8, "UTF-8"), "UTF-8 with byte order mark");
        }
        if (begins(octets, 0xFF, 0xFE)) {
            return new Decoded(strict(octets, 2, StandardCharsets.UTF_16LE, "UTF-16"), "UTF-16");
        }
        if (begins(octets, 0xFE, 0xFF)) {
            return new Decoded(strict(octets, 2, StandardCharsets.UTF_16BE, "UTF-16"), "UTF-16");
        }
        try {
            return new Decoded(strict(octets, 0, StandardCharsets.UTF_8, "UTF-8"), "UTF-8");
        } catch (Unreadable e) {
            if (elseWindows) {
                return new Decoded(strict(octets, 0, WINDOWS, "Windows-1252"), "Windows-1252, as chosen");
            }
            throw new Unreadable(
                    e.getMessage()
                            + " Save the file as UTF-8 and send it again; or, if you know that it is Windows-1252, choose that below.");
        }
    }

    private static boolean begins(byte[] octets, int... mark) {
        if (octets.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((octets[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static String strict(byte[] octets, int from, Charset charset, String name) throws Unreadable {
        ByteBuffer in = ByteBuffer.wrap(octets, from, octets.length - from);
        CharBuffer out = CharBuffer.allocate(octets.length - from + 1);
        CoderResult result = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, out, true);
        out.flip();
        if (result.isError()) {
            long line = out.chars().filter(c -> c == '\n').count() + 1;
            throw new Unreadable(String.format(
                    "Line %d is not %s: it holds octet %02X where no character can have it.",
                    line, name, octets[in.position()] & 0xFF));
        }
        return out.toString();
    }
}
