package org.roundsman.fleet.transfer;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelEnds.Announced;
import org.roundsman.fleet.ModelTerms;

/** A model as a row of text. */
final class ModelCells {

    /** Columns of the draft's fields, where they are not called the same. */
    static final Map<String, String> COLUMNS = Map.ofEntries(
            Map.entry("name", "model"),
            Map.entry("objectId", "object_id"),
            Map.entry("bands", "bands_ghz"),
            Map.entry("poeClass", "poe_class"),
            Map.entry("listPrice", "list_price"),
            Map.entry("firmwareLineId", "firmware_line"),
            Map.entry("termsKind", "warranty"),
            Map.entry("termsFrom", "warranty_from"),
            Map.entry("termsMonths", "warranty_months"),
            Map.entry("termsService", "warranty_service"),
            Map.entry("endOfSale", "end_of_sale"),
            Map.entry("endOfSaleSource", "end_of_sale_source"),
            Map.entry("endOfSoftware", "end_of_software"),
            Map.entry("endOfSoftwareSource", "end_of_software_source"),
            Map.entry("endOfSupport", "end_of_support"),
            Map.entry("endOfSupportSource", "end_of_support_source"));

    private ModelCells() {}

    static Map<String, String> of(ModelDraft draft, KnownNames known) {
        ModelBuild build = draft.build();
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("maker", draft.maker());
        cells.put("model", draft.name());
        cells.put("kind", draft.kind() == null ? "" : draft.kind().word());
        cells.put("object_id", draft.objectId());
        cells.put("radios", String.valueOf(build.radios()));
        cells.put("streams", Objects.toString(build.streams(), ""));
        cells.put("bands_ghz", build.bands());
        cells.put("antenna", build.antenna());
        cells.put("outdoor", build.outdoor() ? "yes" : "no");
        cells.put("poe_class", Objects.toString(build.poeClass(), ""));
        cells.put("mains", build.mains() ? "yes" : "no");
        cells.put("mount", build.mount());
        cells.put(
                "list_price",
                draft.price().amount() == null ? "" : draft.price().amount().toPlainString());
        cells.put("currency", draft.price().currency());
        cells.put("firmware_line", known.lineName(draft.firmwareLineId()));
        cells.put("warranty", word(draft.terms().kind()));
        cells.put("warranty_from", word(draft.terms().from()));
        cells.put("warranty_months", Objects.toString(draft.terms().months(), ""));
        cells.put("warranty_service", word(draft.terms().service()));
        put(cells, "end_of_sale", draft.ends().sale());
        put(cells, "end_of_software", draft.ends().software());
        put(cells, "end_of_support", draft.ends().support());
        cells.put("note", draft.note());
        return cells;
    }

    private static void put(Map<String, String> cells, String column, Announced one) {
        cells.put(column, Objects.toString(one.day(), ""));
        cells.put(column + "_source", one.source());
    }

    private static String word(String stored) {
        return stored.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static ModelDraft read(Cells cells, KnownNames known) {
        String currency = cells.text("currency").toUpperCase(Locale.ROOT);
        return new ModelDraft(
                cells.text("maker"),
                cells.text("model"),
                kind(cells),
                cells.text("object_id"),
                build(cells),
                new ListPrice(ListPrice.usual(cells.amount("list_price"), currency), currency),
                known.line(cells),
                new ModelTerms(
                        choice(cells, "warranty", ModelTerms.KINDS),
                        choice(cells, "warranty_from", ModelTerms.FROMS),
                        cells.numberOrNone("warranty_months"),
                        choice(cells, "warranty_service", ModelTerms.SERVICES)),
                new ModelEnds(
                        announced(cells, "end_of_sale"),
                        announced(cells, "end_of_software"),
                        announced(cells, "end_of_support")),
                cells.text("note"));
    }

    private static ModelBuild build(Cells cells) {
        return new ModelBuild(
                cells.number("radios", 0),
                cells.numberOrNone("streams"),
                ModelBuild.plainBands(cells.text("bands_ghz")),
                cells.text("antenna").toLowerCase(Locale.ROOT),
                cells.yes("outdoor"),
                cells.numberOrNone("poe_class"),
                cells.yes("mains"),
                cells.text("mount"));
    }

    private static Announced announced(Cells cells, String column) {
        return new Announced(cells.day(column), cells.text(column + "_source"));
    }

    /** The word as we write it, however its case, spaces and hyphens are written; a fault and empty for any other. */
    private static String choice(Cells cells, String column, List<String> words) {
        String word = cells.text(column).toUpperCase(Locale.ROOT).replaceAll("[\\s_-]+", "_");
        if (!word.isEmpty() && !words.contains(word)) {
            cells.fault(
                    column,
                    "must be "
                            + String.join(
                                    ", ", words.stream().map(ModelCells::word).toList()) + ", or empty");
            return "";
        }
        return word;
    }

    /** The word on pages, or the name that the database keeps. */
    static DeviceKind kind(Cells cells) {
        String word = cells.text("kind");
        return Arrays.stream(DeviceKind.values())
                .filter(kind ->
                        kind.word().equalsIgnoreCase(word) || kind.name().equalsIgnoreCase(word))
                .findFirst()
                .orElseGet(() -> {
                    cells.fault("kind", "must be access point, switch or gateway");
                    return null;
                });
    }
}
