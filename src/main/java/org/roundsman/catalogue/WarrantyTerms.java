package org.roundsman.catalogue;

import java.util.Optional;
import org.roundsman.fleet.Model;

/**
 * Warranty terms as the trade writes them (common practice, no source). They say how long; from which day, and whether at all,
 * is worked out from what is known of the one unit.
 */
public sealed interface WarrantyTerms {

    /** How the maker serves it; empty where not known. */
    Optional<Service> service();

    /** What the months count from. */
    enum From {
        PURCHASE("purchase"),
        DELIVERY("delivery"),
        INSTALLATION("installation"),
        /** The first day on which Roundsman read the serial number. */
        FIRST_SEEN("first seen");

        private final String word;

        From(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** How a maker serves a claim. */
    enum Service {
        /** The replacement is sent before the broken unit is back. */
        ADVANCE("advance replacement"),
        /** The unit is sent in, and it or another comes back. */
        BENCH("return to bench");

        private final String word;

        Service(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * So many months from a day in the life of the unit.
     *
     * @param months 1 to 600
     */
    record Months(int months, From from, Optional<Service> service) implements WarrantyTerms {
        public Months {
            checkMonths(months);
        }
    }

    /**
     * "Lifetime" that ends so many months after the maker ceased to sell the model; open while no such day is announced.
     *
     * @param months 1 to 600
     */
    record LifetimeAfterSale(int months, Optional<Service> service) implements WarrantyTerms {
        public LifetimeAfterSale {
            checkMonths(months);
        }
    }

    /** "Lifetime" that does not end while the first owner keeps the unit. */
    record LifetimeOfOwner(Optional<Service> service) implements WarrantyTerms {}

    /** Sold without any warranty: that is known. */
    record NoWarranty() implements WarrantyTerms {
        @Override
        public Optional<Service> service() {
            return Optional.empty();
        }
    }

    /**
     * The terms that a model is sold with; empty where none are entered.
     *
     * @throws IllegalArgumentException when the columns of the model contradict each other, which the database refuses
     */
    static Optional<WarrantyTerms> of(Model model) {
        return of(model.termsKind, model.termsFrom, model.termsMonths, model.termsService);
    }

    /** The same from the four columns. */
    static Optional<WarrantyTerms> of(String kind, String from, Short months, String service) {
        Optional<Service> served = service.isEmpty() ? Optional.empty() : Optional.of(Service.valueOf(service));
        return switch (kind) {
            case "" -> Optional.empty();
            case "MONTHS" -> Optional.of(new Months(months, From.valueOf(from), served));
            case "LIFETIME_AFTER_SALE" -> Optional.of(new LifetimeAfterSale(months, served));
            case "LIFETIME_OF_OWNER" -> Optional.of(new LifetimeOfOwner(served));
            case "NONE" -> Optional.of(new NoWarranty());
            default -> throw new IllegalArgumentException("no kind of warranty terms: " + kind);
        };
    }

    private static void checkMonths(int months) {
        if (months < 1 || months > 600) {
            throw new IllegalArgumentException("months of warranty: " + months);
        }
    }
}
