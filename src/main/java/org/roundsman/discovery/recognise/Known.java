package org.roundsman.discovery.recognise;

/** A device of the fleet. */
public record Known(
        long deviceId,
        long customerId,
        long siteId,
        String site,
        String name,
        String host,
        int port,
        Identity identity) {}
