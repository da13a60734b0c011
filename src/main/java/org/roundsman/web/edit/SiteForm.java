package org.roundsman.web.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.HoursText;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.web.page.Words;

/** What a site's form sent, as text, to be shown again when something in it is wrong. */
record SiteForm(
        @RestForm String name,
        @RestForm String timeZone,
        @RestForm String street,
        @RestForm String postcode,
        @RestForm String town,
        @RestForm String country,
        @RestForm String accessNote,
        @RestForm String uplinkDown,
        @RestForm String uplinkUp,
        @RestForm String hours,
        @RestForm String availabilityTarget,
        @RestForm List<String> contactName,
        @RestForm List<String> contactDuty,
        @RestForm List<String> contactPhone,
        @RestForm List<String> contactEmail) {

    private static final int SPARE_CONTACTS = 2;

    static SiteForm blank() {
        return new SiteForm("", "", "", "", "", "", "", "", "", "", "99.5", List.of(), List.of(), List.of(), List.of());
    }

    static SiteForm of(Site site) {
        return new SiteForm(
                site.name,
                site.timeZone,
                site.street,
                site.postcode,
                site.town,
                site.country,
                site.accessNote,
                megabit(site.uplinkDownKbit),
                megabit(site.uplinkUpKbit),
                String.join("\n", HoursText.lines(site.hours)),
                Words.figure(site.availabilityTarget, 3, ""),
                site.contacts.stream().map(c -> c.name).toList(),
                site.contacts.stream().map(c -> c.duty).toList(),
                site.contacts.stream().map(c -> c.phone).toList(),
                site.contacts.stream().map(c -> c.email).toList());
    }

    private static String megabit(Integer kbit) {
        return kbit == null ? "" : Words.figure(kbit / 1000.0, 3, "").replace(",", "");
    }

    SiteDraft draft(Entry entry) {
        return new SiteDraft(
                Entry.text(name),
                Entry.text(timeZone).strip(),
                Entry.text(street),
                Entry.text(postcode),
                Entry.text(town),
                Entry.text(country).strip().toUpperCase(Locale.ROOT),
                Entry.text(accessNote),
                entry.kbit("uplinkDownKbit", Entry.text(uplinkDown)),
                entry.kbit("uplinkUpKbit", Entry.text(uplinkUp)),
                hours(entry),
                entered(),
                target(entry));
    }

    private Double target(Entry entry) {
        String text = Entry.text(availabilityTarget).strip();
        try {
            return text.isEmpty() ? null : Double.valueOf(text);
        } catch (NumberFormatException e) {
            entry.fault("availabilityTarget", "a percentage above 0 up to 100, such as 99.5");
            return null;
        }
    }

    private List<ServiceHours> hours(Entry entry) {
        try {
            return HoursText.read(Entry.text(hours));
        } catch (IllegalArgumentException e) {
            entry.fault("hours", e.getMessage());
            return List.of();
        }
    }

    private List<SiteContact> entered() {
        List<SiteContact> all = new ArrayList<>();
        for (int i = 0; i < contactName.size(); i++) {
            SiteContact contact =
                    new SiteContact(at(contactName, i), at(contactDuty, i), at(contactPhone, i), at(contactEmail, i));
            if (!(contact.name + contact.duty + contact.phone + contact.email).isBlank()) {
                all.add(contact);
            }
        }
        return all;
    }

    private static String at(List<String> values, int i) {
        return i < values.size() ? values.get(i).strip() : "";
    }

    /** Those entered, and a few empty rows for more. */
    public List<SiteContact> contacts() {
        List<SiteContact> rows = new ArrayList<>(entered());
        for (int i = 0; i < SPARE_CONTACTS; i++) {
            rows.add(new SiteContact("", "", "", ""));
        }
        return rows;
    }
}
