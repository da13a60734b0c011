package org.roundsman.fleet;

import java.util.Map;

/**
 * A model as entered: what the maker sells, asks for it and promises with it.
 *
 * @param name as the maker writes it; a maker has one model of a name, without regard to case
 * @param kind null where none was chosen, which is refused
 * @param objectId the sysObjectID that it answers with, in dotted numbers; empty where not known
 * @param firmwareLineId the family of firmware that it takes, null where none is entered
 */
public record ModelDraft(
        String maker,
        String name,
        DeviceKind kind,
        String objectId,
        ModelBuild build,
        ListPrice price,
        Long firmwareLineId,
        ModelTerms terms,
        ModelEnds ends,
        String note) {

    /** A model of which nothing more is known. */
    public static ModelDraft plain(String maker, String name, DeviceKind kind) {
        return new ModelDraft(
                maker, name, kind, "", ModelBuild.UNKNOWN, ListPrice.NONE, null, ModelTerms.NONE, ModelEnds.NONE, "");
    }

    /** What is entered about it now. */
    public static ModelDraft of(Model model) {
        return new ModelDraft(
                model.maker,
                model.name,
                model.kind,
                model.objectId == null ? "" : model.objectId,
                ModelBuild.of(model),
                new ListPrice(model.listPrice, model.currency),
                model.firmwareLineId,
                ModelTerms.of(model),
                ModelEnds.of(model),
                model.note);
    }

    /** What is wrong with it by itself, by field; empty when nothing is. What else the catalogue holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    void check(InputCheck check) {
        check.text("maker", maker, 1, 120);
        check.text("name", name, 1, 120);
        check.that("kind", kind != null, "choose access point, switch or gateway");
        check.that(
                "objectId",
                objectId.isEmpty() || objectId.length() <= 255 && objectId.matches("[0-2](\\.(0|[1-9]\\d{0,9}))+"),
                "dotted numbers, such as 1.3.6.1.4.1.32473.1.22, or leave it empty");
        build.check(check, kind);
        price.check(check, "listPrice", "currency");
        terms.check(check);
        ends.check(check);
        check.text("note", note, 0, 2000);
    }

    void fill(Model model) {
        model.maker = maker.strip();
        model.name = name.strip();
        model.kind = kind;
        model.objectId = objectId.isEmpty() ? null : objectId;
        build.fill(model);
        model.listPrice = price.amount();
        model.currency = price.currency();
        model.firmwareLineId = firmwareLineId;
        terms.fill(model);
        ends.fill(model);
        model.note = note.strip();
    }
}
