package org.roundsman.web.sheet;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.HoursText;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteContact;
import org.roundsman.triage.Finding;
import org.roundsman.visits.VisitSheet;
import org.roundsman.web.page.Words;
import org.roundsman.web.sheet.SheetView.Row;
import org.roundsman.web.triage.AlarmWords;
import org.roundsman.web.triage.WhoSuffers;

/** Says in words what a visit sheet holds. */
final class SheetWords {

    private SheetWords() {}

    static SheetView of(VisitSheet sheet) {
        OpenAlarm alarm = sheet.alarm();
        ZoneId zone = sheet.site().zone();
        return new SheetView(
                alarm.id(),
                AlarmWords.title(alarm),
                sheet.site().name,
                sheet.site().customer.name,
                Words.second(sheet.made(), zone),
                where(sheet.site()),
                sheet.site().contacts.stream().map(SheetWords::contact).toList(),
                fault(alarm, zone, sheet.made()),
                alarm.evidence().stream()
                        .filter(step -> !step.equals(Finding.WORKS_AGAIN))
                        .toList(),
                since(alarm),
                sheet.units().stream()
                        .map(unit -> UnitWords.of(unit, zone, sheet.made()))
                        .toList(),
                sheet.others().stream().map(SheetWords::other).toList(),
                sheet.more() == 0 ? "" : Words.many(sheet.more(), "more device is", "more devices are") + " left out.",
                sheet.bring(),
                sheet.cautions(),
                sheet.done().stream().map(act -> done(act, zone)).toList());
    }

    /** Whatever is no digit only parts the digits for the eye. */
    private static SheetView.Contact contact(SiteContact contact) {
        String digits = contact.phone.replaceAll("[^+0-9]", "");
        String tel = digits.isEmpty() ? "" : "tel:" + digits;
        return new SheetView.Contact(contact.name, contact.duty, contact.phone, tel, contact.email);
    }

    private static List<Row> where(Site site) {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("Address", orNot(address(site))));
        rows.add(new Row("Getting in", orNot(site.accessNote)));
        List<String> hours = HoursText.lines(site.hours);
        rows.add(new Row("Service hours", hours.isEmpty() ? "around the clock" : String.join("; ", hours)));
        rows.add(new Row("Time zone", site.timeZone));
        if (site.uplinkDownKbit != null || site.uplinkUpKbit != null) {
            rows.add(new Row("Uplink", rate(site.uplinkDownKbit) + " down, " + rate(site.uplinkUpKbit) + " up"));
        }
        return rows;
    }

    private static String address(Site site) {
        return Stream.of(site.street, (site.postcode + " " + site.town).strip(), site.country)
                .filter(part -> !part.isBlank())
                .collect(Collectors.joining(", "));
    }

    private static String rate(Integer kbit) {
        return kbit == null ? "not known" : Words.rate(OptionalDouble.of(kbit * 1000.0));
    }

    private static String orNot(String text) {
        return text.isBlank() ? "not entered" : text;
    }

    private static List<Row> fault(OpenAlarm alarm, ZoneId zone, Instant now) {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("What", AlarmWords.resource(alarm) + (alarm.place().isEmpty() ? "" : ", " + alarm.place())));
        rows.add(new Row("Severity", alarm.active() ? alarm.severity().word() : "cleared"));
        rows.add(
                alarm.active()
                        ? new Row(
                                "Since",
                                Words.moment(alarm.began(), zone) + " site time, for "
                                        + Words.length(Duration.between(alarm.began(), now)))
                        : new Row("When", AlarmWords.lasted(alarm, now)));
        String affected = WhoSuffers.of(alarm);
        if (!affected.isEmpty()) {
            rows.add(new Row(
                    alarm.active() ? "Who suffers" : "Who suffered", affected + " (" + AlarmWords.hours(alarm) + ")"));
        }
        rows.add(new Row("What is seen", alarm.text()));
        if (alarm.active()) {
            rows.add(new Row("Next step", alarm.advice()));
        }
        return rows;
    }

    /** Why the evidence does not hold any more, or empty. */
    private static String since(OpenAlarm alarm) {
        if (!alarm.active()) {
            return "It is over: the alarm has cleared.";
        }
        return alarm.evidence().contains(Finding.WORKS_AGAIN) ? Finding.WORKS_AGAIN : "";
    }

    private static SheetView.Other other(Device device) {
        return new SheetView.Other(
                device.name,
                device.kind.word(),
                device.place,
                device.model == null ? "" : device.model.name,
                device.host);
    }

    private static String done(AlarmAct act, ZoneId zone) {
        return Words.moment(act.at(), zone) + ", " + act.by() + ": "
                + act.kind().word() + (act.text().isEmpty() ? "" : ": " + act.text());
    }
}
