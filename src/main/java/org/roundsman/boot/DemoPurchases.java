package org.roundsman.boot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.roundsman.demo.DemoDevice;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.warranty.ContractDraft;
import org.roundsman.warranty.UnitCover;

/**
 * What was bought when, drawn by lot from the numbers of site and device, so that the same fleet always comes out the same. A
 * site is bought in one go and completed later here and there; some things were never written down. Pure.
 */
final class DemoPurchases {

    private static final List<String> SUPPLIERS =
            List.of("Quillmark Supply (invented)", "Harrow Gate Trading (invented)");

    /** Days ago that a site was bought, at least and at most: three and a half years. */
    private static final int NEWEST = 40;

    private static final int OLDEST = 1_280;

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
        LocalDate bought = sown.minusDays(NEWEST + site.nextInt(OLDEST - NEWEST));
        if (own.nextInt(6) == 0) {
            bought = later(bought, own.nextInt(400));
        }
        LocalDate delivered = later(bought, 4 + site.nextInt(12));
        LocalDate installed = later(delivered, 5 + site.nextInt(30));
        boolean dated = lot >= UNKNOWN + UNDATED;
        BigDecimal price =
                unit.unit().model().flatMap(model -> model.listPrice()).orElse(null);
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
