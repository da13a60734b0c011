package org.roundsman.fleet;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.stream.Collectors;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.FieldSet;

/** What people edit, as the audit keeps it. Called in the transaction that has it loaded. */
final class FleetFields {

    private FleetFields() {}

    static Subject subject(Customer customer) {
        return new Subject("customer", customer.id, customer.name, customer.id);
    }

    static Subject subject(Site site) {
        return new Subject("site", site.id, site.name, site.customer.id);
    }

    static Subject subject(Device device) {
        return new Subject("device", device.id, device.name, device.site.customer.id);
    }

    static Subject subject(Model model) {
        return new Subject("model", model.id, model.maker + " " + model.name, null);
    }

    static FieldSet of(Customer customer) {
        return new FieldSet().with("name", customer.name).with("note", customer.note);
    }

    static FieldSet of(Site site) {
        return new FieldSet()
                .with("name", site.name)
                .with("customer", site.customer.name)
                .with("time zone", site.timeZone)
                .with("street", site.street)
                .with("postcode", site.postcode)
                .with("town", site.town)
                .with("country", site.country)
                .with("getting in", site.accessNote)
                .with("uplink down, kbit/s", site.uplinkDownKbit)
                .with("uplink up, kbit/s", site.uplinkUpKbit)
                .with("availability target, %", site.availabilityTarget)
                .with(
                        "service hours",
                        site.hours.stream().map(FleetFields::text).sorted().collect(joined()))
                .with(
                        "contacts",
                        site.contacts.stream().map(FleetFields::text).sorted().collect(joined()));
    }

    static FieldSet of(Device device) {
        return new FieldSet()
                .with("name", device.name)
                .with("site", device.site.name)
                .with("kind", device.kind.word())
                .with("address", device.host)
                .with("port", device.port)
                .with("credentials", device.credential == null ? "" : device.credential.name)
                .with("model", device.model == null ? "" : device.model.maker + " " + device.model.name)
                .with("place", device.place)
                .with("seconds between rounds", device.intervalSeconds)
                .with("paused", device.paused ? "yes" : "no");
    }

    static FieldSet of(Model model) {
        return new FieldSet()
                .with("maker", model.maker)
                .with("name", model.name)
                .with("kind", model.kind == null ? "" : model.kind.word())
                .with("object id", model.objectId)
                .with("radios", model.radios)
                .with("streams", model.streams)
                .with("bands", model.bands)
                .with("antenna", model.antenna)
                .with("outdoor", model.outdoor ? "yes" : "no")
                .with("PoE class", model.poeClass)
                .with("mains", model.mains ? "yes" : "no")
                .with("mount", model.mount)
                .with(
                        "list price",
                        model.listPrice == null ? "" : model.listPrice.toPlainString() + " " + model.currency)
                .with("firmware line", line(model.firmwareLineId))
                .with("warranty terms", model.termsKind)
                .with("warranty from", model.termsFrom)
                .with("warranty months", model.termsMonths)
                .with("warranty service", model.termsService)
                .with("end of sale", model.endOfSale)
                .with("end of sale source", model.endOfSaleSource)
                .with("end of software", model.endOfSoftware)
                .with("end of software source", model.endOfSoftwareSource)
                .with("end of support", model.endOfSupport)
                .with("end of support source", model.endOfSupportSource)
                .with("note", model.note);
    }

    /** By its name, which says more than its number; that table is the catalogue's. */
    private static String line(Long id) {
        return id == null
                ? ""
                : Model.getEntityManager()
                        .createNativeQuery("select name from firmware_line where id = :id", String.class)
                        .setParameter("id", id)
                        .getSingleResult()
                        .toString();
    }

    private static String text(ServiceHours stretch) {
        String day = DayOfWeek.of(stretch.weekday).getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
        return stretch.weekday + " " + day + " " + stretch.opens + "-" + stretch.closes;
    }

    private static String text(SiteContact contact) {
        return java.util.stream.Stream.of(contact.name, contact.duty, contact.phone, contact.email)
                .filter(part -> part != null && !part.isBlank())
                .collect(joined());
    }

    private static java.util.stream.Collector<CharSequence, ?, String> joined() {
        return Collectors.joining(", ");
    }
}
