package org.roundsman.web.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelTerms;
import org.roundsman.web.edit.Entry;

/** What can be chosen in a model's form, with what is chosen. */
record ModelLists(
        List<Option> kinds,
        List<Option> antennas,
        List<Option> powers,
        List<Option> lines,
        List<Option> terms,
        List<Option> froms,
        List<Option> services) {

    private static final Map<String, String> TERMS = Map.of(
            "MONTHS", "so many months from a day",
            "LIFETIME_AFTER_SALE", "lifetime: so many months after end of sale",
            "LIFETIME_OF_OWNER", "lifetime while the first owner keeps it",
            "NONE", "no warranty");

    static ModelLists of(List<FirmwareLine> lines, ModelForm form) {
        List<DeviceKind> kinds = Arrays.asList(DeviceKind.values());
        return new ModelLists(
                Option.of("", kinds, DeviceKind::name, DeviceKind::word, Entry.text(form.kind())).stream()
                        .skip(1)
                        .toList(),
                Option.of(
                        "not known",
                        ModelBuild.ANTENNAS,
                        one -> one,
                        one -> one.equals("external") ? "external, by connectors" : one,
                        Entry.text(form.antenna())),
                Option.of(
                        "not known",
                        feeds(),
                        one -> one,
                        one -> one.equals(ModelForm.MAINS) ? "mains" : "PoE class " + one + " (IEEE 802.3)",
                        Entry.text(form.power())),
                Option.of(
                        "none is entered",
                        lines,
                        line -> line.id.toString(),
                        line -> line.name,
                        Entry.text(form.firmwareLineId())),
                Option.of("not entered", ModelTerms.KINDS, kind -> kind, TERMS::get, Entry.text(form.termsKind())),
                Option.of(
                        "no day",
                        ModelTerms.FROMS,
                        from -> from,
                        from -> WarrantyTerms.From.valueOf(from).word(),
                        Entry.text(form.termsFrom())),
                Option.of(
                        "not known",
                        ModelTerms.SERVICES,
                        service -> service,
                        service -> WarrantyTerms.Service.valueOf(service).word(),
                        Entry.text(form.termsService())));
    }

    private static List<String> feeds() {
        List<String> powers = new ArrayList<>(List.of(ModelForm.MAINS));
        for (int poeClass = 0; poeClass <= 8; poeClass++) {
            powers.add(String.valueOf(poeClass));
        }
        return powers;
    }
}
