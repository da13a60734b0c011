package org.roundsman.fleet;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;

/**
 * A site as entered.
 *
 * @param timeZone IANA name, such as Europe/Berlin
 * @param country ISO 3166-1 alpha-2 or empty
 * @param uplinkDownKbit kbit/s, null where not known
 * @param uplinkUpKbit kbit/s, null where not known
 * @param hours empty for around the clock
 * @param availabilityTarget percent of the service hours of a month, above 0 up to 100; null leaves it as it is, 99.5 for a
 *     new site
 */
public record SiteDraft(
        String name,
        String timeZone,
        String street,
        String postcode,
        String town,
        String country,
        String accessNote,
        Integer uplinkDownKbit,
        Integer uplinkUpKbit,
        List<ServiceHours> hours,
        List<SiteContact> contacts,
        Double availabilityTarget) {

    /** Without a word about the availability target. */
    public SiteDraft(
            String name,
            String timeZone,
            String street,
            String postcode,
            String town,
            String country,
            String accessNote,
            Integer uplinkDownKbit,
            Integer uplinkUpKbit,
            List<ServiceHours> hours,
            List<SiteContact> contacts) {
        this(
                name,
                timeZone,
                street,
                postcode,
                town,
                country,
                accessNote,
                uplinkDownKbit,
                uplinkUpKbit,
                hours,
                contacts,
                null);
    }

    /** What is wrong with it by itself, by field; empty when nothing is. What else the fleet holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    void check(InputCheck check) {
        check.text("name", name, 1, 120);
        check.text("street", street, 0, 200);
        check.text("postcode", postcode, 0, 20);
        check.text("town", town, 0, 120);
        check.text("accessNote", accessNote, 0, 2000);
        check.that("country", country.matches("([A-Z]{2})?"), "two capital letters, such as DE, or leave it empty");
        check.that("timeZone", isZone(timeZone), "no time zone of that name; use one like Europe/Berlin");
        check.range("uplinkDownKbit", uplinkDownKbit, 1, Integer.MAX_VALUE);
        check.range("uplinkUpKbit", uplinkUpKbit, 1, Integer.MAX_VALUE);
        hours.forEach(h -> checkHours(check, h));
        long starts =
                hours.stream().map(h -> h.weekday + " " + h.opens).distinct().count();
        check.that("hours", starts == hours.size(), "two stretches of one day begin at the same time");
        check.that(
                "availabilityTarget",
                availabilityTarget == null || availabilityTarget > 0 && availabilityTarget <= 100,
                "a percentage above 0 up to 100, such as 99.5");
        contacts.forEach(c -> check.text("contacts", c.name, 1, 120));
    }

    private static void checkHours(InputCheck check, ServiceHours stretch) {
        check.that("hours", stretch.weekday >= 1 && stretch.weekday <= 7, "a weekday is 1 (Monday) to 7 (Sunday)");
        check.that(
                "hours",
                stretch.closes.equals(LocalTime.MIDNIGHT) || stretch.closes.isAfter(stretch.opens),
                "closing comes before opening; for a night, end the first day at 00:00 and begin the next there");
    }

    private static boolean isZone(String name) {
        try {
            return !ZoneId.of(name).getId().isEmpty()
                    && ZoneId.getAvailableZoneIds().contains(name);
        } catch (DateTimeException e) {
            return false;
        }
    }
}
