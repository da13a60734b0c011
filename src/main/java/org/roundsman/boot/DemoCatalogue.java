package org.roundsman.boot;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.catalogue.FirmwareLine.Scheme;
import org.roundsman.catalogue.FirmwareLineDraft;
import org.roundsman.catalogue.FirmwareLines;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoOffers;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelTerms;

/** Fills the catalogue of the demonstration, where nobody has entered anything about a model yet. */
@ApplicationScoped
class DemoCatalogue {

    /** Before all that rests on prices and terms. */
    private static final int FIRST = 100;

    private final Catalogue catalogue;
    private final FirmwareLines lines;

    @Inject
    DemoCatalogue(Catalogue catalogue, FirmwareLines lines) {
        this.catalogue = catalogue;
        this.lines = lines;
    }

    void sown(@Observes @Priority(FIRST) DemoSown event) {
        fill(LocalDate.ofInstant(event.first(), ZoneOffset.UTC));
    }

    /**
     * @param sown the day from which announced ends are counted
     */
    void fill(LocalDate sown) {
        for (Model stored : catalogue.all()) {
            ModelDraft draft = ModelDraft.of(stored);
            DemoModel.catalogue().stream()
                    .filter(model ->
                            model.maker().equals(stored.maker) && model.label().equals(stored.name))
                    .filter(model -> bare(draft))
                    .forEach(model ->
                            catalogue.change(stored.id, DemoOffers.of(model, draft, sown, line(model.kind()))));
        }
    }

    private static boolean bare(ModelDraft draft) {
        return draft.price().equals(ListPrice.NONE)
                && draft.terms().equals(ModelTerms.NONE)
                && draft.ends().equals(ModelEnds.NONE)
                && draft.firmwareLineId() == null
                && draft.build().mount().isEmpty()
                && !draft.build().mains()
                && draft.note().isEmpty();
    }

    private long line(DeviceKind kind) {
        String name = DemoOffers.line(kind);
        return lines.all().stream()
                .filter(line -> line.name.equalsIgnoreCase(name))
                .findFirst()
                .orElseGet(() -> lines.add(draft(kind, name)))
                .id;
    }

    /** One of each scheme, so that all can be looked at. */
    private static FirmwareLineDraft draft(DeviceKind kind, String name) {
        return switch (kind) {
            case ACCESS_POINT -> new FirmwareLineDraft(name, Scheme.SEMANTIC, "", "Invented for demonstration.");
            case NETWORK_SWITCH -> new FirmwareLineDraft(name, Scheme.DOTTED, "", "Invented for demonstration.");
            case GATEWAY ->
                new FirmwareLineDraft(name, Scheme.PATTERN, "(\\d+)\\.(\\d+)\\.(\\d+)", "Invented for demonstration.");
        };
    }
}
