package org.roundsman.fleet;

import java.util.List;
import java.util.Set;

/**
 * The warranty that a model is sold with, by its words as they are kept. What they mean together, {@code catalogue} says.
 *
 * @param kind one of {@link #KINDS}, or empty where none is entered
 * @param from one of {@link #FROMS}; with MONTHS only
 * @param months 1 to 600; with MONTHS and LIFETIME_AFTER_SALE only, else null
 * @param service one of {@link #SERVICES}, or empty where not known
 */
public record ModelTerms(String kind, String from, Integer months, String service) {

    /** None are entered. */
    public static final ModelTerms NONE = new ModelTerms("", "", null, "");

    public static final List<String> KINDS = List.of("MONTHS", "LIFETIME_AFTER_SALE", "LIFETIME_OF_OWNER", "NONE");
    public static final List<String> FROMS = List.of("PURCHASE", "DELIVERY", "INSTALLATION", "FIRST_SEEN");
    public static final List<String> SERVICES = List.of("ADVANCE", "BENCH");

    private static final Set<String> COUNTING = Set.of("MONTHS", "LIFETIME_AFTER_SALE");

    static ModelTerms of(Model model) {
        return new ModelTerms(
                model.termsKind,
                model.termsFrom,
                model.termsMonths == null ? null : model.termsMonths.intValue(),
                model.termsService);
    }

    void check(InputCheck check) {
        known(check, "termsKind", kind, KINDS);
        known(check, "termsFrom", from, FROMS);
        known(check, "termsService", service, SERVICES);
        check.range("termsMonths", months, 1, 600);
        boolean dated = kind.equals("MONTHS");
        check.that("termsFrom", !dated || !from.isEmpty(), "say which day the months count from");
        check.that(
                "termsFrom", dated || from.isEmpty(), "only terms of so many months count from a day; leave it empty");
        boolean counting = COUNTING.contains(kind);
        check.that("termsMonths", !counting || months != null, "say how many months");
        check.that("termsMonths", counting || months == null, "these terms have no months; leave it empty");
        boolean served = !kind.isEmpty() && !kind.equals("NONE");
        check.that("termsService", served || service.isEmpty(), "without a warranty nothing is served; leave it empty");
    }

    private static void known(InputCheck check, String field, String word, List<String> words) {
        check.that(field, word.isEmpty() || words.contains(word), "one of the list, or leave it empty");
    }

    void fill(Model model) {
        model.termsKind = kind;
        model.termsFrom = from;
        model.termsMonths = months == null ? null : months.shortValue();
        model.termsService = service;
    }
}
