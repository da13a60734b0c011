package org.roundsman.web.warranty;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.warranty.CoverStep;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.UnitModel;
import org.roundsman.web.fleet.Flag;

/**
 * A unit in a list, in words.
 *
 * @param address of its page
 * @param price list price, or empty
 * @param support last day of the maker's help when that is over, or empty
 */
record UnitLine(
        String address,
        String title,
        String serial,
        String model,
        String customer,
        String site,
        String place,
        String lastDay,
        Flag flag,
        String price,
        String support) {

    static final List<String> HEADS = List.of(
            "customer",
            "site",
            "device",
            "place",
            "serial",
            "model",
            "status",
            "last_day",
            "derivation",
            "list_price",
            "currency",
            "end_of_support");

    static UnitLine of(UnitCover cover) {
        Unit unit = cover.unit();
        return new UnitLine(
                "/warranty/units/" + unit.key(),
                unit.title().isEmpty() ? "unit without a name" : unit.title(),
                unit.serial(),
                unit.modelLabel(),
                unit.customer(),
                unit.site(),
                unit.place(),
                CoverWords.lastDay(cover),
                Flag.of(cover.status(), Optional.empty()),
                CoverWords.price(cover),
                cover.pastSupport()
                        ? unit.model()
                                .flatMap(UnitModel::endOfSupport)
                                .map(LocalDate::toString)
                                .orElse("")
                        : "");
    }

    /** The row of a spreadsheet, under {@link #HEADS}. */
    static List<String> row(UnitCover cover) {
        Unit unit = cover.unit();
        return List.of(
                unit.customer(),
                unit.site(),
                unit.name(),
                unit.place(),
                unit.serial(),
                unit.modelLabel(),
                cover.status().word(),
                cover.lastDay().map(LocalDate::toString).orElse(""),
                cover.derivation().stream().map(CoverStep::text).collect(Collectors.joining("; ")),
                unit.model()
                        .flatMap(UnitModel::listPrice)
                        .map(BigDecimal::toPlainString)
                        .orElse(""),
                unit.model().map(UnitModel::currency).orElse(""),
                unit.model()
                        .flatMap(UnitModel::endOfSupport)
                        .map(LocalDate::toString)
                        .orElse(""));
    }
}
