package org.roundsman.warranty;

import java.time.Instant;

/**
 * A file that proves a purchase, without its content.
 *
 * @param name as uploaded, without path, quotes and control characters; ends as its kind does
 * @param sha256 of the content, in hexadecimal digits
 * @param addedBy sign-in name
 */
public record Evidence(
        long id,
        long purchaseId,
        String name,
        EvidenceKind kind,
        int octets,
        String sha256,
        String addedBy,
        Instant addedAt) {}
