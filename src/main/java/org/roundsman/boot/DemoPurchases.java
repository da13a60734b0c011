package org.roundsman.boot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.roundsman.catalogue.WarrantyTerms.Months;
import org.roundsman.demo.DemoDevice;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.warranty.ContractDraft;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.UnitModel;

/**
 * What was bought when, drawn by lot from the numbers of site and device, so that the same fleet always comes out the same. A
 * site is bought in one go and completed later here and there; some things were never written down. Pure.
 */
final class DemoPurchases {

    private static final List<String> SUPPLIERS =
            List.of("Quillmark Supply (invented)", "Harrow Gate Trading (invented)");

    /** The last days of cover lie between so many days before the day of sowing and so many after it. */
    private static final int BEFORE = 150;

    private static final int AFTER = 740;

    /** Nothing was bought later than so many days before: it has to be delivered and installed by now. */
    private static final int NEWEST = 45;

    /** Each site is bought in so many lots. */
    private static final int LOTS = 3;

    /** Of a hundred units, so many have no purchase, and so many one without any day. */
    private static final int UNKNOWN = 5;

    private static final int UNDATED = 4;

    private final LocalDate sown;

    /** @param sown the day from which all is counted back */
    DemoPurchases(LocalDate sown) {
        this.sown = sown;
    }

    /** The purchase of a device; empty where nobody knows it any more. */
    Optional<PurchaseDraft> of(DemoDevice device, UnitCover unit) {
        Random site = new Random(31L * device.site() + 7);
        site.nextInt();
        Random own = new Random(7_919L * device.number() + 11);
        own.nextInt();
        int lot = own.nextInt(100);
        if (lot < UNKNOWN) {
            return Optional.empty();
        }
        LocalDate bought = bought(unit, spread(device.site() * LOTS + own.nextInt(LOTS)));
        LocalDate delivered = later(bought, 4 + site.nextInt(12));
        LocalDate installed = later(delivered, 5 + site.nextInt(30));
        boolean dated = lot >= UNKNOWN + UNDATED;
        BigDecimal price = unit.unit().model().flatMap(UnitModel::listPrice).orElse(null);
        String order = bought.getYear() + "-" + (1_000 + device.site());
        return Optional.of(new PurchaseDraft(
                device.serial(),
                unit.siteId().orElseThrow(),
                unit.deviceId().orElseThrow(),
                SUPPLIERS.get(device.site() % SUPPLIERS.size()),
                "PO-" + order,
                "INV-" + order,
                dated ? bought : null,
                dated ? delivered : null,
                dated ? installed : null,
                price == null ? null : price.multiply(new BigDecimal("0.82")).setScale(2, RoundingMode.HALF_UP),
                price == null ? "" : "EUR",
                "Invented for demonstration"));
    }

    /** So that the cover by the terms of the model ends on a day that is spread evenly. */
    private LocalDate bought(UnitCover unit, double place) {
        int months = unit.unit()
                .model()
                .flatMap(UnitModel::terms)
                .filter(Months.class::isInstance)
                .map(Months.class::cast)
                .map(Months::months)
                .orElse(36);
        LocalDate last = sown.plusDays(Math.round(place * (BEFORE + AFTER)) - BEFORE);
        LocalDate bought = last.minusMonths(months);
        return bought.isAfter(sown.minusDays(NEWEST)) ? sown.minusDays(NEWEST) : bought;
    }

    /** From 0 to 1: numbers one after the other lie far apart, and all of them together evenly. */
    private static double spread(int number) {
        return number * 0.618_034 % 1;
    }

    private LocalDate later(LocalDate day, int days) {
        LocalDate later = day.plusDays(days);
        return later.isAfter(sown) ? sown : later;
    }

    /** A contract of that customer in turn: one that runs, one that ends soon, one that begins after a gap; else none. */
    Optional<ContractDraft> contract(int turn) {
        return switch (turn) {
            case 0 -> Optional.of(contract("FN-1042", "ADVANCE", sown.minusDays(200), sown.plusDays(900)));
            case 1 -> Optional.of(contract("FN-1057", "BENCH", sown.minusDays(345), sown.plusDays(20)));
            case 3 -> Optional.of(contract("FN-1063", "ADVANCE", sown.plusDays(75), sown.plusDays(805)));
            default -> Optional.empty();
        };
    }

    private static ContractDraft contract(String number, String service, LocalDate from, LocalDate to) {
        return new ContractDraft(number, "Fernhollow Networks", service, from, to, "Invented for demonstration");
    }
}
