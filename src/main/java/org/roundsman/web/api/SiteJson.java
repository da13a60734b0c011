package org.roundsman.web.api;

import java.time.LocalTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;

/** One address of a customer. */
@Schema(name = "Site")
record SiteJson(
        @Schema(examples = "21") long id,
        @Schema(examples = "7") long customerId,
        @Schema(examples = "Pebblegate Dental") String customer,
        @Schema(description = "What was entered about it") Entry entered) {

    static SiteJson of(Site site) {
        return new SiteJson(site.id, site.customer.id, site.customer.name, Entry.of(site));
    }

    /** In lists. */
    @Schema(name = "SiteLine")
    record Line(
            @Schema(examples = "21") long id,
            @Schema(examples = "Harbour clinic") String name,
            @Schema(examples = "7") long customerId,
            @Schema(examples = "Pebblegate Dental") String customer,
            @Schema(examples = "Europe/Berlin") String timeZone,
            @Schema(examples = "Saltmarsh") String town) {

        static Line of(Site site) {
            return new Line(site.id, site.name, site.customer.id, site.customer.name, site.timeZone, site.town);
        }
    }

    /** A stretch in which the site needs its Wi-Fi, in its own time. */
    @Schema(name = "ServiceHours")
    record Hours(
            @Schema(description = "1 = Monday to 7 = Sunday (ISO 8601)", examples = "1")
            Integer weekday,

            @Schema(type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.STRING, examples = "08:00")
            LocalTime opens,

            @Schema(
                    type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.STRING,
                    description = "00:00 is the end of the day",
                    examples = "18:30")
            LocalTime closes) {}

    /** Somebody to call about a site. */
    @Schema(name = "Contact")
    record Contact(
            @Schema(examples = "Ida Fernsby") String name,
            @Schema(examples = "front desk") String duty,
            @Schema(examples = "+49 30 23125 014") String phone,
            @Schema(examples = "desk@pebblegate.example") String email) {}

    /** A site as entered. */
    @Schema(name = "SiteEntry")
    record Entry(
            @Schema(required = true, maxLength = 120, examples = "Harbour clinic")
            String name,

            @Schema(required = true, description = "IANA name", examples = "Europe/Berlin")
            String timeZone,

            @Schema(examples = "1 Quay") String street,
            @Schema(examples = "12345") String postcode,
            @Schema(examples = "Saltmarsh") String town,

            @Schema(description = "ISO 3166-1 alpha-2, or empty", examples = "DE")
            String country,

            @Schema(description = "How to get in", examples = "Ring at the side door")
            String accessNote,

            @Schema(description = "kbit/s (1000 bit) towards the site", nullable = true, examples = "50000")
            Integer uplinkDownKbit,

            @Schema(description = "kbit/s (1000 bit) from the site", nullable = true, examples = "10000")
            Integer uplinkUpKbit,

            @Schema(description = "None at all means around the clock")
            List<Hours> hours,

            List<Contact> contacts)
            implements ApiBody {

        static Entry of(Site site) {
            return new Entry(
                    site.name,
                    site.timeZone,
                    site.street,
                    site.postcode,
                    site.town,
                    site.country,
                    site.accessNote,
                    site.uplinkDownKbit,
                    site.uplinkUpKbit,
                    site.hours.stream()
                            .map(h -> new Hours((int) h.weekday, h.opens, h.closes))
                            .toList(),
                    site.contacts.stream()
                            .map(c -> new Contact(c.name, c.duty, c.phone, c.email))
                            .toList());
        }

        SiteDraft draft() {
            return new SiteDraft(
                    Given.text(name),
                    Given.text(timeZone),
                    Given.text(street),
                    Given.text(postcode),
                    Given.text(town),
                    Given.text(country),
                    Given.text(accessNote),
                    uplinkDownKbit,
                    uplinkUpKbit,
                    Given.list(hours).stream().map(Entry::stretch).toList(),
                    Given.list(contacts).stream().map(Entry::contact).toList());
        }

        /** Weekday 0 where none is given, which is refused; a missing time is midnight. */
        private static ServiceHours stretch(Hours given) {
            return new ServiceHours(
                    weekday(Given.or(given.weekday(), 0)),
                    Given.or(given.opens(), LocalTime.MIDNIGHT),
                    Given.or(given.closes(), LocalTime.MIDNIGHT));
        }

        private static int weekday(int given) {
            return given < 1 || given > 7 ? 0 : given;
        }

        private static SiteContact contact(Contact given) {
            return new SiteContact(
                    Given.text(given.name()),
                    Given.text(given.duty()),
                    Given.text(given.phone()),
                    Given.text(given.email()));
        }
    }
}
