package org.roundsman.demo.invent;

import java.time.ZoneId;

/** Where a site lies: the country and time zone exist, the towns and postcodes do not. */
enum Region {
    BRITAIN("GB", "Europe/London", "ZZ99 %dZZ"),
    GERMANY("DE", "Europe/Berlin", "0000%d"),
    AMERICA_EAST("US", "America/New_York", "0000%d"),
    AMERICA_MIDDLE("US", "America/Chicago", "0000%d"),
    AUSTRALIA("AU", "Australia/Adelaide", "000%d");

    final String country;
    final ZoneId zone;
    private final String postcode;

    Region(String country, String zone, String postcode) {
        this.country = country;
        this.zone = ZoneId.of(zone);
        this.postcode = postcode;
    }

    /** A postcode in a form or range that the country's post does not deliver to (from memory). */
    String postcode(int digit) {
        return String.format(postcode, digit);
    }
}
