package org.roundsman.dispatch.work;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.roundsman.fleet.InputCheck;

/** A picture that can be shown. What it is, its first octets say. @param type media type, or empty where there is none */
public record Logo(byte[] octets, String type) {

    public static final Logo NONE = new Logo(new byte[0], "");

    /** The largest, in octets. */
    static final int LARGEST = 256 * 1024;

    /** The most pixels either way. A picture says its size before its pixels, so that a small file cannot fill our memory. */
    static final int MOST_PIXELS = 4000;

    private static final String FIELD = "logo";

    /** RFC 2083, 12.11: the signature. */
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

    /** ITU-T T.81, B.1.1.3: start of image, then another marker. */
    private static final byte[] JPEG = {(byte) 0xff, (byte) 0xd8, (byte) 0xff};

    /** Notes the fault where it cannot be taken. */
    public static Logo check(byte[] octets, InputCheck check) {
        if (octets.length == 0 || octets.length > LARGEST) {
            check.that(FIELD, false, "choose a picture of at most 256 KiB that is not empty");
            return NONE;
        }
        boolean png = begins(octets, PNG);
        if (!png && !begins(octets, JPEG)) {
            check.that(FIELD, false, "this is neither a PNG nor a JPEG picture, whatever its name says");
            return NONE;
        }
        check.that(
                FIELD,
                shows(octets, png ? "png" : "jpeg"),
                "this picture is damaged, or larger than " + MOST_PIXELS + " by " + MOST_PIXELS + " pixels");
        return new Logo(octets, png ? "image/png" : "image/jpeg");
    }

    private static boolean begins(byte[] octets, byte[] with) {
        return octets.length > with.length && Arrays.equals(octets, 0, with.length, with, 0, with.length);
    }

    private static boolean shows(byte[] octets, String format) {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
        ImageReader reader = readers.next();
        try (ImageInputStream stream = new MemoryCacheImageInputStream(new ByteArrayInputStream(octets))) {
            reader.setInput(stream, true, true);
            return fits(reader.getWidth(0)) && fits(reader.getHeight(0)) && reader.read(0) != null;
        } catch (IOException | RuntimeException e) {
            return false; // the library throws either at what is no picture; said as the fault of the field
        } finally {
            reader.dispose();
        }
    }

    private static boolean fits(int pixels) {
        return pixels >= 1 && pixels <= MOST_PIXELS;
    }
}
