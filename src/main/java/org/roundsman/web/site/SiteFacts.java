package org.roundsman.web.site;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.fleet.HoursText;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteContact;
import org.roundsman.web.page.Words;

/** What people entered about a site, as it is shown. */
record SiteFacts(
        long id,
        String name,
        long customerId,
        String customer,
        String address,
        String localTime,
        List<String> hours,
        String uplink,
        String accessNote,
        List<SiteContact> contacts) {

    static SiteFacts of(Site site, Instant now) {
        return new SiteFacts(
                site.id,
                site.name,
                site.customer.id,
                site.customer.name,
                address(site),
                localTime(site, now),
                HoursText.lines(site.hours),
                uplink(site),
                site.accessNote,
                List.copyOf(site.contacts));
    }

    private static String address(Site site) {
        String town = (site.postcode + " " + site.town).strip();
        return Stream.of(site.street, town, site.country)
                .filter(part -> !part.isBlank())
                .collect(Collectors.joining(", "));
    }

    private static String localTime(Site site, Instant now) {
        ZonedDateTime there = now.atZone(site.zone());
        return DateTimeFormatter.ofPattern("EEEE HH:mm", Locale.ENGLISH).format(there) + " (" + site.timeZone + ")";
    }

    private static String uplink(Site site) {
        if (site.uplinkDownKbit == null && site.uplinkUpKbit == null) {
            return "";
        }
        return rate(site.uplinkDownKbit) + " down, " + rate(site.uplinkUpKbit) + " up";
    }

    private static String rate(Integer kbit) {
        return kbit == null ? "not known" : Words.rate(OptionalDouble.of(kbit * 1000.0));
    }
}
