package org.roundsman.claims;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.fleet.CustomerScope;

/**
 * A time in which one unit stood in one place.
 *
 * @param deviceId the place; empty when it left the fleet
 * @param device name of the place, as it is, or was when it left the fleet
 * @param until empty while the unit stands there
 * @param announcedBy who said that the unit would come; empty where the device itself was first
 * @param instead the serial number that the device says against the announced one, or empty
 * @param insteadSince since when it says so
 */
public record Stay(
        long id,
        long unitId,
        String serial,
        String model,
        long customerId,
        OptionalLong siteId,
        String site,
        ZoneId zone,
        OptionalLong deviceId,
        String device,
        Instant from,
        Optional<Instant> until,
        Standing standing,
        String announcedBy,
        Optional<Instant> announcedAt,
        String instead,
        Optional<Instant> insteadSince) {

    /** How it is known that the unit stands there. The name is what the table stores. */
    public enum Standing {
        /** The device said so by itself. */
        READ("read from the device"),
        /** A person said so, of a device that tells no serial number. */
        ENTERED("entered by hand"),
        /** A person put it there, and the device has not said so yet. */
        ANNOUNCED("announced, the device has not said it yet"),
        /** A person put it there, and the device says so. */
        CONFIRMED("announced, and the device says so");

        private final String word;

        Standing(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Whether the device has not yet said that this unit is there. */
    public boolean awaited() {
        return until.isEmpty() && standing == Standing.ANNOUNCED;
    }

    /** Whether the device says that another unit is there. */
    public boolean contradicted() {
        return !instead.isEmpty();
    }

    /** Where it is, as it may be told to whoever asks: {@code at Pier AP, North pier}. */
    String spot(CustomerScope scope) {
        return scope.includes(customerId) ? "at " + device + ", " + site : "in a place elsewhere";
    }

    /** Whether that is this unit's serial number. */
    public boolean isOf(String other) {
        return serial.equalsIgnoreCase(other.strip());
    }
}
