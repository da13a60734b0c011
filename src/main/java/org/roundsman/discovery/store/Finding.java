package org.roundsman.discovery.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.roundsman.discovery.Review;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;

/**
 * What one address said, as it is stored.
 *
 * @param credentialId null when the credentials are not there any more
 * @param adoptedAt when a person adopted it
 * @param adoptedAs the device that it became; null when it is not adopted, or the device is not there any more
 */
public record Finding(
        long id,
        String host,
        int port,
        Outcome outcome,
        Long credentialId,
        Instant at,
        OptionalDouble uptimeSeconds,
        List<String> profiles,
        Facts facts,
        String remark,
        Optional<Review> review,
        Optional<Instant> adoptedAt,
        Long adoptedAs) {}
