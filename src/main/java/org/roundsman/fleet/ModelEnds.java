package org.roundsman.fleet;

import java.time.LocalDate;

/**
 * When a maker ends what, as announced.
 *
 * @param sale last day on which it is sold
 * @param software last day of firmware from the maker; not before the end of sale
 * @param support last day of any help from the maker; not before the others
 */
public record ModelEnds(Announced sale, Announced software, Announced support) {

    /**
     * One announcement.
     *
     * @param day null where nothing is announced
     * @param source where it stands written: needed with a day, and empty without one
     */
    public record Announced(LocalDate day, String source) {

        public static final Announced NOTHING = new Announced(null, "");

        void check(InputCheck check, String field) {
            String sourceField = field + "Source";
            check.text(sourceField, source, 0, 200);
            check.that(
                    sourceField,
                    day == null || !source.isBlank(),
                    "say where that day stands written, such as the number of the maker's notice");
            check.that(
                    sourceField,
                    day != null || source.isBlank(),
                    "a source without a day says nothing; leave it empty");
            PurchaseDraft.checkDay(check, field, day);
        }

        private boolean after(Announced other) {
            return day != null && other.day != null && day.isAfter(other.day);
        }
    }

    public static final ModelEnds NONE = new ModelEnds(Announced.NOTHING, Announced.NOTHING, Announced.NOTHING);

    static ModelEnds of(Model model) {
        return new ModelEnds(
                new Announced(model.endOfSale, model.endOfSaleSource),
                new Announced(model.endOfSoftware, model.endOfSoftwareSource),
                new Announced(model.endOfSupport, model.endOfSupportSource));
    }

    void check(InputCheck check) {
        sale.check(check, "endOfSale");
        software.check(check, "endOfSoftware");
        support.check(check, "endOfSupport");
        check.that("endOfSoftware", !sale.after(software), "firmware cannot end before the end of sale");
        check.that("endOfSupport", !software.after(support), "support cannot end before the end of software");
        check.that("endOfSupport", !sale.after(support), "support cannot end before the end of sale");
    }

    void fill(Model model) {
        model.endOfSale = sale.day();
        model.endOfSaleSource = sale.source().strip();
        model.endOfSoftware = software.day();
        model.endOfSoftwareSource = software.source().strip();
        model.endOfSupport = support.day();
        model.endOfSupportSource = support.source().strip();
    }
}
