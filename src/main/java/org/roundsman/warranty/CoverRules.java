package org.roundsman.warranty;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms.Service;

/**
 * Works out until when a unit is covered: by the terms it was sold with, and by contracts. All days are inclusive. What is
 * not known is never guessed: the derivation says what is missing.
 */
final class CoverRules {

    private final List<Stretch> stretches = new ArrayList<>();
    private final List<CoverStep> steps = new ArrayList<>();
    private final List<Contract> contracts;
    private final LocalDate today;
    private final boolean missing;

    private CoverRules(Unit unit, List<Contract> contracts, LocalDate today) {
        this.today = today;
        this.contracts = contracts.stream()
                .sorted(Comparator.comparing(Contract::from).thenComparing(Contract::to))
                .toList();
        TermsCover terms = TermsCover.of(unit);
        terms.stretch().ifPresent(stretches::add);
        steps.addAll(terms.steps());
        missing = terms.missing();
        for (Contract contract : this.contracts) {
            stretches.add(new Stretch(contract.from(), contract.to(), contract.service()));
            steps.add(CoverStep.counts(
                    "contract " + contract.number() + ": " + contract.from() + " to " + contract.to()));
        }
    }

    /**
     * The cover of a unit.
     *
     * @param contracts that cover the unit, in any order
     * @param today in the time zone of the unit's site
     */
    static Cover of(Unit unit, List<Contract> contracts, LocalDate today) {
        return new CoverRules(unit, contracts, today).cover();
    }

    private Cover cover() {
        List<Stretch> now = stretches.stream().filter(one -> one.holds(today)).toList();
        if (now.isEmpty()) {
            return without();
        }
        LocalDate end = end(now);
        Optional<Service> service =
                now.stream().map(Stretch::service).flatMap(Optional::stream).min(Comparator.naturalOrder());
        if (end.equals(Stretch.OPEN)) {
            return new Cover(CoverStatus.COVERED, Optional.empty(), service, steps, Optional.empty());
        }
        if (missing) {
            steps.add(CoverStep.note("how long the terms of the model cover it is not known"));
        }
        Optional<LocalDate> begins = later(Optional.of(end));
        return new Cover(CoverStatus.of(end, today), Optional.of(end), service, steps, begins);
    }

    /** The end of the chain without a gap that begins with what covers today. */
    private LocalDate end(List<Stretch> now) {
        LocalDate end =
                now.stream().map(Stretch::to).max(Comparator.naturalOrder()).orElseThrow();
        List<Stretch> ascending =
                stretches.stream().sorted(Comparator.comparing(Stretch::from)).toList();
        for (Stretch next : ascending) {
            boolean joins = end.equals(Stretch.OPEN) || !next.from().isAfter(end.plusDays(1));
            if (joins && next.to().isAfter(end)) {
                end = next.to();
            }
        }
        return end;
    }

    private Cover without() {
        Optional<LocalDate> last = stretches.stream()
                .map(Stretch::to)
                .filter(day -> day.isBefore(today))
                .max(Comparator.naturalOrder());
        Optional<LocalDate> begins = later(last);
        return missing
                ? new Cover(CoverStatus.MISSING, Optional.empty(), Optional.empty(), steps, begins)
                : new Cover(CoverStatus.ENDED, last, Optional.empty(), steps, begins);
    }

    /** Says of the contract that begins next and does not follow on what ends then; its first day. */
    private Optional<LocalDate> later(Optional<LocalDate> end) {
        Optional<Contract> found = contracts.stream()
                .filter(one -> one.from().isAfter(today))
                .filter(one -> end.isEmpty() || one.from().isAfter(end.get().plusDays(1)))
                .findFirst();
        found.ifPresent(next -> steps.add(
                CoverStep.note("contract " + next.number() + " begins " + next.from() + gap(end, next.from()))));
        return found.map(Contract::from);
    }

    /** Where the terms are not known, they may fill the gap. */
    private String gap(Optional<LocalDate> end, LocalDate from) {
        if (missing || end.isEmpty()) {
            return "";
        }
        long days = ChronoUnit.DAYS.between(end.get(), from) - 1;
        return ", after a gap of " + days + (days == 1 ? " day" : " days");
    }
}
