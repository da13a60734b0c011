package org.roundsman.fleet.transfer;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.roundsman.fleet.HoursText;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;

/** A site as a row of text. */
final class SiteCells {

    /** Columns of the draft's fields, where they are not called the same. */
    static final Map<String, String> COLUMNS = Map.of(
            "name", "site",
            "timeZone", "time_zone",
            "accessNote", "getting_in",
            "uplinkDownKbit", "uplink_down_mbit",
            "uplinkUpKbit", "uplink_up_mbit",
            "hours", "service_hours");

    private static final Comparator<ServiceHours> ORDER =
            Comparator.comparing((ServiceHours h) -> h.weekday).thenComparing(h -> h.opens);

    private SiteCells() {}

    static Map<String, String> of(String customer, SiteDraft draft) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("customer", customer);
        cells.put("site", draft.name());
        cells.put("time_zone", draft.timeZone());
        cells.put("street", draft.street());
        cells.put("postcode", draft.postcode());
        cells.put("town", draft.town());
        cells.put("country", draft.country());
        cells.put("getting_in", draft.accessNote());
        cells.put("uplink_down_mbit", megabit(draft.uplinkDownKbit()));
        cells.put("uplink_up_mbit", megabit(draft.uplinkUpKbit()));
        List<ServiceHours> hours = draft.hours().stream().sorted(ORDER).toList();
        cells.put("service_hours", String.join("\n", HoursText.lines(hours)));
        cells.put("contacts", ContactLines.write(draft.contacts()));
        return cells;
    }

    private static String megabit(Integer kbit) {
        return kbit == null
                ? ""
                : BigDecimal.valueOf(kbit).movePointLeft(3).stripTrailingZeros().toPlainString();
    }

    static SiteDraft read(Cells cells) {
        return new SiteDraft(
                cells.text("site"),
                cells.text("time_zone"),
                cells.text("street"),
                cells.text("postcode"),
                cells.text("town"),
                cells.text("country").toUpperCase(Locale.ROOT),
                cells.text("getting_in"),
                cells.kbit("uplink_down_mbit"),
                cells.kbit("uplink_up_mbit"),
                hours(cells),
                contacts(cells));
    }

    private static List<ServiceHours> hours(Cells cells) {
        try {
            return HoursText.read(cells.text("service_hours").replace(';', '\n')).stream()
                    .sorted(ORDER)
                    .toList();
        } catch (IllegalArgumentException e) {
            cells.fault("service_hours", e.getMessage());
            return List.of();
        }
    }

    private static List<SiteContact> contacts(Cells cells) {
        try {
            return ContactLines.read(cells.text("contacts"));
        } catch (IllegalArgumentException e) {
            cells.fault("contacts", e.getMessage());
            return List.of();
        }
    }
}
