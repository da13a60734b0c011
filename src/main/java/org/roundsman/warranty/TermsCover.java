package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.catalogue.WarrantyTerms.From;

/**
 * What the terms that a unit was sold with come to. Months are added with the calendar, always from the first day: a month
 * without that day ends on its last ({@link LocalDate#plusMonths}). Terms whose first day is still to come count as begun.
 *
 * @param stretch what is covered; empty where nothing is, or where it is not known
 * @param missing whether something needed is not known
 */
record TermsCover(Optional<Stretch> stretch, boolean missing, List<CoverStep> steps) {

    static TermsCover of(Unit unit) {
        List<CoverStep> notes = new ArrayList<>();
        unit.stranger()
                .ifPresent(other -> notes.add(CoverStep.note("the purchase that names this device is of serial number "
                        + other.serial() + ", and the device says " + unit.serial() + ": it does not count here")));
        unit.fate()
                .ifPresent(fate -> notes.add(CoverStep.note(
                        "the unit was " + fate.word() + " on " + fate.since() + ": it is left out of lists and sums")));
        TermsCover plain = plain(unit);
        notes.addAll(plain.steps);
        return new TermsCover(plain.stretch, plain.missing, notes);
    }

    private static TermsCover plain(Unit unit) {
        if (unit.model().isEmpty()) {
            return missing("no model is known");
        }
        UnitModel model = unit.model().get();
        if (model.terms().isEmpty()) {
            return missing("no warranty terms are entered for " + model.label());
        }
        return of(model.terms().get(), model, unit);
    }

    private static TermsCover of(WarrantyTerms terms, UnitModel model, Unit unit) {
        if (terms instanceof WarrantyTerms.Months months) {
            return months(months, unit);
        }
        if (terms instanceof WarrantyTerms.LifetimeAfterSale lifetime) {
            return model.endOfSale()
                    .map(sale -> counted("end of sale", sale, lifetime.months(), terms))
                    .orElseGet(() -> open("lifetime: no end of sale is announced", terms));
        }
        return terms instanceof WarrantyTerms.LifetimeOfOwner
                ? open("lifetime while the first owner keeps it", terms)
                : new TermsCover(Optional.empty(), false, List.of(CoverStep.counts("sold without warranty")));
    }

    private static TermsCover months(WarrantyTerms.Months terms, Unit unit) {
        return first(terms.from(), unit)
                .map(day -> counted(word(terms.from()), day, terms.months(), terms))
                .orElseGet(() -> missing(
                        terms.from() == From.FIRST_SEEN
                                ? "no serial number was read yet, so no first day is known"
                                : "no date of " + terms.from().word() + " is entered"));
    }

    private static Optional<LocalDate> first(From from, Unit unit) {
        return from == From.FIRST_SEEN
                ? unit.firstSeen()
                : unit.purchase().map(Purchase::facts).map(facts -> switch (from) {
                    case PURCHASE -> facts.boughtOn();
                    case DELIVERY -> facts.deliveredOn();
                    default -> facts.installedOn();
                });
    }

    private static String word(From from) {
        return switch (from) {
            case PURCHASE -> "bought";
            case DELIVERY -> "delivered";
            case INSTALLATION -> "installed";
            case FIRST_SEEN -> "first seen";
        };
    }

    private static TermsCover counted(String word, LocalDate day, int months, WarrantyTerms terms) {
        LocalDate last = day.plusMonths(months);
        String text = word + " " + day + " + " + months + (months == 1 ? " month = " : " months = ") + last;
        return known(new Stretch(Stretch.ALWAYS, last, terms.service()), text);
    }

    private static TermsCover open(String text, WarrantyTerms terms) {
        return known(new Stretch(Stretch.ALWAYS, Stretch.OPEN, terms.service()), text);
    }

    private static TermsCover known(Stretch stretch, String text) {
        return new TermsCover(Optional.of(stretch), false, List.of(CoverStep.counts(text)));
    }

    private static TermsCover missing(String text) {
        return new TermsCover(Optional.empty(), true, List.of(CoverStep.missing(text)));
    }
}
