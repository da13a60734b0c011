package org.roundsman.demo;

import java.time.ZoneId;
import java.util.List;

/**
 * One invented site.
 *
 * @param number its place in the fleet, from 0 without gaps
 * @param customer number of its customer
 * @param country ISO 3166-1 alpha-2
 * @param uplinkDownKbit kbit/s of 1000 bit
 * @param hours empty means around the clock
 * @param devices the gateway first, then switches, then access points
 */
public record DemoSite(
        int number,
        int customer,
        String name,
        SiteKind kind,
        ZoneId zone,
        String street,
        String postcode,
        String town,
        String country,
        String accessNote,
        int uplinkDownKbit,
        int uplinkUpKbit,
        List<DemoHours> hours,
        List<DemoContact> contacts,
        List<DemoNetwork> networks,
        List<DemoDevice> devices) {

    public DemoSite {
        hours = List.copyOf(hours);
        contacts = List.copyOf(contacts);
        networks = List.copyOf(networks);
        devices = List.copyOf(devices);
    }
}
