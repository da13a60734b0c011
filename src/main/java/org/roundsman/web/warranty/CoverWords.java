package org.roundsman.web.warranty;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.warranty.Cost;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.UnitModel;
import org.roundsman.web.page.Words;

/** Days, sums and states of warranty as people read them. Days are written as ISO 8601 does, so that lists sort. */
public final class CoverWords {

    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.ENGLISH);

    private CoverWords() {}

    /** {@code 1,234.50 EUR}. */
    static String money(BigDecimal amount, String currency) {
        return String.format(Locale.ENGLISH, "%,." + Math.max(0, amount.scale()) + "f", amount) + "\u00a0" + currency;
    }

    /** One text for each currency. */
    static List<String> money(Cost cost) {
        return cost.sums().entrySet().stream()
                .map(one -> money(one.getValue(), one.getKey()))
                .toList();
    }

    /** What has no price is counted and said; empty where everything has one. */
    static String unpriced(Cost cost) {
        return cost.unpriced() == 0 ? "" : Words.count(cost.unpriced()) + " without a list price";
    }

    /** Number of units with what their replacement costs, for a cell of a table. */
    public record Sum(int units, String count, List<String> money, String unpriced) {

        public static Sum of(Cost cost) {
            return new Sum(cost.units(), Words.count(cost.units()), CoverWords.money(cost), CoverWords.unpriced(cost));
        }
    }

    static String price(UnitCover cover) {
        Optional<UnitModel> model = cover.unit().model();
        return model.flatMap(UnitModel::listPrice)
                .map(price -> money(
                        org.roundsman.fleet.PurchaseDraft.usual(
                                price, model.get().currency()),
                        model.get().currency()))
                .orElse("");
    }

    static String month(YearMonth month) {
        return MONTH.format(month);
    }

    /** The last day, or why there is none. */
    static String lastDay(UnitCover cover) {
        return cover.lastDay()
                .map(LocalDate::toString)
                .orElse(
                        switch (cover.status()) {
                            case MISSING -> "not known";
                            case ENDED -> cover.cover().begins().isPresent() ? "not covered yet" : "never covered";
                            default -> "no end";
                        });
    }
}
