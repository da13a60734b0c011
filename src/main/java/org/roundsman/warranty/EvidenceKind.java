package org.roundsman.warranty;

import java.util.Arrays;
import java.util.Optional;

/** What evidence may be, known by its first octets and never by its name. */
public enum EvidenceKind {
    /** ISO 32000-1, 7.5.2. */
    PDF("application/pdf", "pdf", "%PDF-".getBytes(java.nio.charset.StandardCharsets.US_ASCII)),
    /** RFC 2083, 12.11: the signature. */
    PNG("image/png", "png", new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'}),
    /** ITU-T T.81, B.1.1.3: start of image, then another marker. */
    JPEG("image/jpeg", "jpg", new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff});

    private final String mediaType;
    private final String ending;
    private final byte[] begin;

    EvidenceKind(String mediaType, String ending, byte[] begin) {
        this.mediaType = mediaType;
        this.ending = ending;
        this.begin = begin;
    }

    public String mediaType() {
        return mediaType;
    }

    /** The last part of a file name, without the dot. */
    public String ending() {
        return ending;
    }

    /** Empty when it is none of them. */
    static Optional<EvidenceKind> of(byte[] content) {
        return Arrays.stream(values())
                .filter(kind -> content.length > kind.begin.length
                        && Arrays.equals(content, 0, kind.begin.length, kind.begin, 0, kind.begin.length))
                .findFirst();
    }
}
