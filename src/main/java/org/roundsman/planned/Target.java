package org.roundsman.planned;

import java.time.ZoneId;
import java.util.List;
import java.util.OptionalLong;

/**
 * What is worked on.
 *
 * @param siteId of the site, or the one where the device stands now; empty for all sites of a customer
 * @param site its name, or empty
 * @param deviceId empty for sites, and for a device that has left the fleet
 * @param device its name, or the one that it had; empty for sites
 * @param zones time zones of the sites it reaches, each once; the first is that of the first site by name
 */
public record Target(
        Reach reach,
        long customerId,
        String customer,
        OptionalLong siteId,
        String site,
        OptionalLong deviceId,
        String device,
        List<ZoneId> zones) {

    public Target {
        zones = zones.isEmpty() ? List.of(java.time.ZoneOffset.UTC) : List.copyOf(zones);
    }

    /** Whether it reaches that device, or with no device the site as a whole. */
    public boolean reaches(long customer, long theSite, OptionalLong theDevice) {
        return switch (reach) {
            case CUSTOMER -> customerId == customer;
            case SITE -> siteId.equals(OptionalLong.of(theSite));
            case DEVICE -> deviceId.isPresent() && deviceId.equals(theDevice);
        };
    }

    /** In words, without the customer for a site or device. */
    public String words() {
        return switch (reach) {
            case CUSTOMER -> "all sites of " + customer;
            case SITE -> site;
            case DEVICE -> device + (site.isEmpty() ? "" : " at " + site);
        };
    }

    /** The time zone in which its times are shown. */
    public ZoneId zone() {
        return zones.get(0);
    }
}
