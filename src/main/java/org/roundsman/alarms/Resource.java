package org.roundsman.alarms;

/**
 * What an alarm is about (RFC 8632: resource).
 *
 * @param id of the site or device; 0 for the service itself
 * @param part of the device, such as {@code radio 2} or {@code port 7}; empty for the whole
 */
public record Resource(Kind kind, long id, String part) {

    /** Sorts of resources; the name is what tables store. */
    public enum Kind {
        /** Roundsman itself. */
        SERVICE,
        SITE,
        DEVICE
    }

    public Resource {
        if ((kind == Kind.SERVICE) != (id == 0)) {
            throw new IllegalArgumentException(kind + " with id " + id);
        }
    }

    public static Resource service() {
        return new Resource(Kind.SERVICE, 0, "");
    }

    public static Resource site(long siteId) {
        return new Resource(Kind.SITE, siteId, "");
    }

    public static Resource device(long deviceId) {
        return new Resource(Kind.DEVICE, deviceId, "");
    }

    public static Resource radio(long deviceId, int number) {
        return new Resource(Kind.DEVICE, deviceId, "radio " + number);
    }
}
