package org.roundsman.web.warranty;

import jakarta.enterprise.context.RequestScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.CoverStep;
import org.roundsman.warranty.Evidence;
import org.roundsman.warranty.Evidences;
import org.roundsman.warranty.Purchase;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.UnitCover;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;
import org.roundsman.web.warranty.UnitView.Fact;

/** Makes the page of a unit. */
@RequestScoped
class UnitViews {

    private final Contracts contracts;
    private final Evidences evidences;
    private final Visitor visitor;

    UnitViews(Contracts contracts, Evidences evidences, Visitor visitor) {
        this.contracts = contracts;
        this.evidences = evidences;
        this.visitor = visitor;
    }

    UnitView of(UnitCover cover) {
        Unit unit = cover.unit();
        String purchase = unit.purchase()
                .map(one -> "/warranty/units/purchases/" + one.id())
                .orElse("");
        String device =
                unit.deviceId().isPresent() ? "devices/" + unit.deviceId().getAsLong() : "";
        return new UnitView(
                UnitLine.of(cover),
                cover.cover().service().map(WarrantyTerms.Service::word).orElse("not known"),
                cover.today() + " in " + unit.zone(),
                cover.derivation().stream().map(UnitViews::step).toList(),
                device.isEmpty() ? "" : "/" + device,
                device.isEmpty() ? purchase + "/edit" : "/warranty/units/" + device + "/purchase",
                purchase.isEmpty() ? "" : purchase + "/evidence",
                unit.purchase().map(UnitViews::facts).orElse(List.of()),
                contracts.of(cover).stream()
                        .map(one -> ContractLine.of(one, cover.today()))
                        .toList(),
                unit.purchase()
                        .map(one -> evidences.list(visitor.scope(), one.id()).stream()
                                .map(file -> file(file, unit))
                                .toList())
                        .orElse(List.of()),
                unit.purchase()
                        .map(one -> "/changes?kind=purchase&subject=" + one.id())
                        .orElse(""));
    }

    private static UnitView.Step step(CoverStep step) {
        return new UnitView.Step(
                switch (step.kind()) {
                    case COUNTS -> "";
                    case MISSING -> "Missing: ";
                    case NOTE -> "Note: ";
                },
                step.text());
    }

    private static UnitView.File file(Evidence one, Unit unit) {
        return new UnitView.File(
                one.id(),
                one.name(),
                one.kind() + ", " + Math.max(1, Math.round(one.octets() / 1024.0)) + " KB, attached "
                        + Words.moment(one.addedAt(), unit.zone()) + " by " + one.addedBy());
    }

    private static List<Fact> facts(Purchase one) {
        PurchaseDraft facts = one.facts();
        List<Fact> all = new ArrayList<>();
        all.add(new Fact("Bought", day(facts.boughtOn())));
        all.add(new Fact("Delivered", day(facts.deliveredOn())));
        all.add(new Fact("Installed", day(facts.installedOn())));
        all.add(new Fact("Supplier", facts.supplier()));
        all.add(new Fact("Order number", facts.orderNumber()));
        all.add(new Fact("Invoice number", facts.invoiceNumber()));
        all.add(new Fact("Price paid", facts.price() == null ? "" : CoverWords.money(facts.price(), facts.currency())));
        all.add(new Fact("Note", facts.note()));
        return all;
    }

    private static String day(LocalDate day) {
        return Objects.toString(day, "");
    }
}
