package org.roundsman.demo;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelEnds.Announced;
import org.roundsman.fleet.ModelTerms;

/**
 * What the invented maker asks for its models and promises with them. Older models come to their ends within the year after the
 * day of sowing, and one is past them, so that a year ahead has something to show. Pure.
 */
public final class DemoOffers {

    private static final String NOTE = "Invented for demonstration.";

    private DemoOffers() {}

    /** The name of the family of firmware that models of that kind take. */
    public static String line(DeviceKind kind) {
        return switch (kind) {
            case ACCESS_POINT -> "Tamarack access points";
            case NETWORK_SWITCH -> "Tamarack switches";
            case GATEWAY -> "Tamarack gateways";
        };
    }

    /**
     * A stored model with all that the maker offers.
     *
     * @param stored as it was sown, without an offer
     * @param sown the day from which announced ends are counted
     * @param lineId the family of firmware that it takes
     */
    public static ModelDraft of(DemoModel model, ModelDraft stored, LocalDate sown, long lineId) {
        return new ModelDraft(
                stored.maker(),
                stored.name(),
                stored.kind(),
                stored.objectId(),
                build(model, stored.build()),
                new ListPrice(price(model), "EUR"),
                lineId,
                terms(model),
                ends(model, sown),
                NOTE);
    }

    private static ModelBuild build(DemoModel model, ModelBuild stored) {
        boolean mains = model.kind() != DeviceKind.ACCESS_POINT;
        return new ModelBuild(
                stored.radios(),
                stored.streams(),
                stored.bands(),
                stored.antenna(),
                stored.outdoor(),
                mains ? null : stored.poeClass(),
                mains,
                mount(model));
    }

    private static String mount(DemoModel model) {
        return switch (model) {
            case TR_10, GI_7 -> "wall plate";
            case TR_22, TR_33 -> "ceiling rail";
            case TR_50X -> "mast clamp";
            case TS_24, TG_4 -> "rack, one unit high";
        };
    }

    private static BigDecimal price(DemoModel model) {
        return new BigDecimal(
                switch (model) {
                    case TR_10 -> "119.00";
                    case TR_22 -> "249.00";
                    case TR_33 -> "489.00";
                    case TR_50X -> "749.00";
                    case TS_24 -> "899.00";
                    case TG_4 -> "1290.00";
                    case GI_7 -> "199.00";
                });
    }

    private static ModelTerms terms(DemoModel model) {
        return switch (model) {
            case TR_10 -> new ModelTerms("LIFETIME_AFTER_SALE", "", 36, "ADVANCE");
            case TR_22 -> new ModelTerms("MONTHS", "PURCHASE", 36, "ADVANCE");
            case TR_33 -> new ModelTerms("MONTHS", "INSTALLATION", 60, "ADVANCE");
            case TR_50X -> new ModelTerms("MONTHS", "DELIVERY", 24, "BENCH");
            case TS_24 -> new ModelTerms("LIFETIME_OF_OWNER", "", null, "ADVANCE");
            case TG_4 -> new ModelTerms("MONTHS", "FIRST_SEEN", 12, "BENCH");
            case GI_7 -> new ModelTerms("NONE", "", null, "");
        };
    }

    private static ModelEnds ends(DemoModel model, LocalDate sown) {
        return switch (model) {
            case TR_10 ->
                new ModelEnds(
                        in(sown, -26, "notice TR-2024-09 of the maker (invented)"),
                        in(sown, 4, "notice TR-2026-03 of the maker (invented)"),
                        in(sown, 10, "notice TR-2026-03 of the maker (invented)"));
            case TR_22 ->
                new ModelEnds(
                        in(sown, 7, "notice TR-2026-05 of the maker (invented)"),
                        in(sown, 31, "notice TR-2026-05 of the maker (invented)"),
                        in(sown, 43, "notice TR-2026-05 of the maker (invented)"));
            case TG_4 ->
                new ModelEnds(
                        in(sown, -40, "notice TG-2023-02 of the maker (invented)"),
                        in(sown, -8, "notice TG-2025-01 of the maker (invented)"),
                        in(sown, -1, "notice TG-2025-01 of the maker (invented)"));
            case TR_50X ->
                new ModelEnds(
                        in(sown, 11, "letter of the maker to its partners (invented)"),
                        Announced.NOTHING,
                        Announced.NOTHING);
            case TR_33, TS_24, GI_7 -> ModelEnds.NONE;
        };
    }

    private static Announced in(LocalDate sown, int months, String source) {
        return new Announced(sown.plusMonths(months), source);
    }
}
