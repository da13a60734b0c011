package org.roundsman.web.catalogue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.catalogue.TermsWords;
import org.roundsman.fleet.Model;
import org.roundsman.web.page.Words;

/**
 * A model as pages show it. What is not known is empty.
 *
 * @param build radios, bands, antenna, power and mount, each a short text
 * @param devices how many devices of the fleet are of it
 */
record ModelView(
        long id,
        String maker,
        String name,
        String kind,
        List<String> build,
        String price,
        String terms,
        List<End> ends,
        String line,
        String devices) {

    /**
     * Something that the maker ends.
     *
     * @param what such as {@code end of sale}
     * @param past whether that day is over
     */
    record End(String what, LocalDate day, String source, boolean past) {}

    static ModelView of(Catalogue.Entry entry, LocalDate today) {
        Model model = entry.model();
        return new ModelView(
                model.id,
                model.maker,
                model.name,
                model.kind.word(),
                build(model),
                price(model),
                TermsWords.of(model).orElse(""),
                ends(model, today),
                entry.line().map(line -> line.name).orElse(""),
                entry.devices() == 0 ? "" : Words.count(entry.devices()));
    }

    /** {@code 1,249.00 EUR}; empty where there is none. */
    static String price(Model model) {
        if (model.listPrice == null) {
            return "";
        }
        BigDecimal amount = model.listPrice;
        return String.format(Locale.ENGLISH, "%,." + Math.max(0, amount.scale()) + "f", amount) + " " + model.currency;
    }

    private static List<String> build(Model model) {
        List<String> parts = new ArrayList<>();
        if (model.radios > 0) {
            parts.add(Words.many(model.radios, "radio", "radios"));
        }
        if (model.streams != null) {
            parts.add(Words.many(model.streams, "stream", "streams"));
        }
        if (!model.bands.isEmpty()) {
            parts.add(model.bands.replace(",", ", ").replaceFirst(", ([^,]*)$", " and $1") + " GHz");
        }
        if (!model.antenna.isEmpty()) {
            parts.add(model.antenna + " antenna");
        }
        parts.add(model.outdoor ? "outdoor" : "indoor");
        if (model.mains) {
            parts.add("mains");
        }
        if (model.poeClass != null) {
            parts.add("PoE class " + model.poeClass);
        }
        if (!model.mount.isEmpty()) {
            parts.add(model.mount);
        }
        return parts;
    }

    private static List<End> ends(Model model, LocalDate today) {
        return Stream.of(
                        end("end of sale", model.endOfSale, model.endOfSaleSource, today),
                        end("end of software", model.endOfSoftware, model.endOfSoftwareSource, today),
                        end("end of support", model.endOfSupport, model.endOfSupportSource, today))
                .filter(end -> end.day() != null)
                .toList();
    }

    private static End end(String what, LocalDate day, String source, LocalDate today) {
        return new End(what, day, source, day != null && day.isBefore(today));
    }

    public String built() {
        return String.join(", ", build);
    }
}
