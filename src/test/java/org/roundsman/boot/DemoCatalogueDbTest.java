package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.catalogue.FirmwareLines;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoOffers;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.Models;

/** The catalogue of the demonstration. */
@QuarkusTest
class DemoCatalogueDbTest {

    private static final LocalDate SOWN = LocalDate.of(2026, 8, 31);

    @Inject
    DemoCatalogue demo;

    @Inject
    Catalogue catalogue;

    @Inject
    FirmwareLines lines;

    @Inject
    Models models;

    private Map<DemoModel, Model> sown() {
        return DemoModel.catalogue().stream().collect(Collectors.toMap(Function.identity(), this::sown));
    }

    private Model sown(DemoModel invented) {
        Model model = new Model();
        model.maker = invented.maker();
        model.name = invented.label();
        model.kind = invented.kind();
        model.poeClass =
                invented.poeClass() == null ? null : invented.poeClass().shortValue();
        return models.ensure(model);
    }

    /** Undone at the end: the models belong to no test. */
    @Test
    @TestTransaction
    void whatNobodyEnteredIsFilledAndWhatSomebodyEnteredStays() {
        Map<DemoModel, Model> stored = sown();
        stored.get(DemoModel.TR_33).note = "Ours: sold without a mount.";
        demo.fill(SOWN);
        Model old = stored.get(DemoModel.TR_10);
        assertThat(old.listPrice.toPlainString() + " " + old.currency).isEqualTo("119.00 EUR");
        assertThat(old.endOfSale).isEqualTo(LocalDate.of(2024, 6, 30));
        assertThat(old.endOfSupport).isBetween(SOWN, SOWN.plusYears(1));
        assertThat(old.endOfSupportSource).contains("invented");
        assertThat(stored.get(DemoModel.TG_4).endOfSupport).isBefore(SOWN);
        assertThat(stored.get(DemoModel.TS_24).mains).isTrue();
        assertThat(stored.get(DemoModel.TR_33).listPrice).isNull();
        assertThat(stored.values())
                .extracting(model -> model.termsKind)
                .contains("MONTHS", "LIFETIME_AFTER_SALE", "LIFETIME_OF_OWNER");
        assertThat(lines.all())
                .filteredOn(line -> line.name.startsWith("Tamarack "))
                .extracting(line -> line.scheme)
                .containsExactlyInAnyOrder(FirmwareLine.Scheme.values());
        old.note = "Changed by somebody.";
        old.listPrice = null;
        old.currency = "";
        demo.fill(SOWN);
        assertThat(old.listPrice).isNull();
        assertThat(catalogue.entries())
                .filteredOn(entry -> entry.model().id.equals(old.id))
                .singleElement()
                .satisfies(entry -> assertThat(entry.line()).isPresent());
    }

    @Test
    void everyOfferIsOneThatThePagesWouldTake() {
        for (DemoModel model : DemoModel.values()) {
            ModelDraft bare = ModelDraft.plain(model.maker(), model.label(), model.kind());
            assertThat(DemoOffers.of(model, bare, SOWN, 1).faults())
                    .as(model.label())
                    .isEmpty();
        }
    }
}
