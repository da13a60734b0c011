package org.roundsman.web.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.NotFoundException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.claims.Spare;
import org.roundsman.claims.Spares;
import org.roundsman.claims.Stay;
import org.roundsman.claims.Units;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.web.claims.Entry.Choice;

/** Makes what the form of a replacement shows. */
@ApplicationScoped
class ReplaceViews {

    private final Units units;
    private final Spares spares;
    private final StoreChoices choices;
    private final Clock clock;

    ReplaceViews(Units units, Spares spares, StoreChoices choices, Clock clock) {
        this.units = units;
        this.spares = spares;
        this.choices = choices;
        this.clock = clock;
    }

    /**
     * The form.
     *
     * @param now the unit that stands there, in words, or empty
     */
    record Shown(
            long deviceId,
            String device,
            String site,
            String zone,
            String now,
            ReplaceForm form,
            List<Choice> spares,
            List<Choice> models,
            List<Choice> olds,
            List<StoreChoices.Group> places) {}

    Shown blank(CustomerScope scope, long deviceId, String claim) {
        Device device = device(scope, deviceId);
        String old = claim.isEmpty() ? Old.SCRAPPED.name() : Old.SENT_BACK.name();
        String at = Entry.field(clock.instant(), device.site.zone());
        return shown(scope, device, new ReplaceForm("", "", "", at, old, "", "", claim));
    }

    Shown again(CustomerScope scope, long deviceId, ReplaceForm form) {
        return shown(scope, device(scope, deviceId), form.shown());
    }

    ZoneId zone(CustomerScope scope, long deviceId) {
        return device(scope, deviceId).site.zone();
    }

    private Device device(CustomerScope scope, long deviceId) {
        return units.device(scope, deviceId).orElseThrow(NotFoundException::new);
    }

    private Shown shown(CustomerScope scope, Device device, ReplaceForm form) {
        long customer = device.site.customer.id;
        return new Shown(
                device.id,
                device.name,
                device.site.name,
                device.site.timeZone,
                units.at(scope, device.id).map(ReplaceViews::words).orElse(""),
                form,
                spares.usableBy(scope, customer).stream()
                        .map(spare -> choice(spare, form.spare()))
                        .toList(),
                choices.models(device.kind, form.model()),
                Arrays.stream(Old.values())
                        .map(old ->
                                new Choice(old.name(), old.word(), old.name().equals(form.old())))
                        .toList(),
                choices.near(scope, customer, device.site, form.where()));
    }

    private static String words(Stay stay) {
        return (stay.model().isEmpty() ? "" : stay.model() + ", ") + "serial number " + stay.serial();
    }

    private static Choice choice(Spare spare, String chosen) {
        String value = String.valueOf(spare.id());
        String model = spare.unit().model().isEmpty()
                ? "model not known"
                : spare.unit().model();
        String text = model + ", " + spare.unit().serial() + " (" + spare.where() + ")";
        return new Choice(value, text, value.equals(chosen));
    }
}
