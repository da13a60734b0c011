package org.roundsman.web.edit;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Arrays;
import java.util.List;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Models;
import org.roundsman.fleet.Site;

/** What can be chosen in a device's form. */
@ApplicationScoped
class DeviceChoices {

    private final Credentials credentials;
    private final Models models;

    DeviceChoices(Credentials credentials, Models models) {
        this.credentials = credentials;
        this.models = models;
    }

    /** Something to choose. */
    record Choice(String value, String text, boolean chosen) {}

    /** The three lists of the form. */
    record Lists(List<Choice> kinds, List<Choice> credentials, List<Choice> models) {}

    Lists of(Site site, DeviceForm form) {
        return new Lists(
                Arrays.stream(DeviceKind.values())
                        .map(kind -> choice(kind.name(), kind.word(), form.kind()))
                        .toList(),
                credentials.usableAt(site.id).stream()
                        .map(c -> choice(c.id.toString(), c.name + " (" + c.summary() + ")", form.credentialId()))
                        .toList(),
                models.all().stream()
                        .map(model -> choice(model.id.toString(), model.maker + " " + model.name, form.modelId()))
                        .toList());
    }

    private static Choice choice(String value, String text, String chosen) {
        return new Choice(value, text, value.equals(chosen));
    }
}
