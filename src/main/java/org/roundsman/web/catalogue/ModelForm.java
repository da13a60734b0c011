package org.roundsman.web.catalogue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelEnds.Announced;
import org.roundsman.fleet.ModelTerms;
import org.roundsman.web.edit.Entry;

/**
 * What a model's form sent, as text, to be shown again when something in it is wrong.
 *
 * @param power {@code mains}, a PoE class 0 to 8, or empty where not known
 * @param lift the line to which the model may move though that lifts a withdrawal, as {@link #liftTo} writes it
 */
record ModelForm(
        @RestForm String maker,
        @RestForm String name,
        @RestForm String kind,
        @RestForm String objectId,
        @RestForm String radios,
        @RestForm String streams,
        @RestForm String bands,
        @RestForm String antenna,
        @RestForm String outdoor,
        @RestForm String power,
        @RestForm String mount,
        @RestForm String listPrice,
        @RestForm String currency,
        @RestForm String firmwareLineId,
        @RestForm String termsKind,
        @RestForm String termsFrom,
        @RestForm String termsMonths,
        @RestForm String termsService,
        @RestForm String endOfSale,
        @RestForm String endOfSaleSource,
        @RestForm String endOfSoftware,
        @RestForm String endOfSoftwareSource,
        @RestForm String endOfSupport,
        @RestForm String endOfSupportSource,
        @RestForm String note,
        @RestForm String lift) {

    static final String MAINS = "mains";

    static ModelForm blank() {
        return of(ModelDraft.plain("", "", DeviceKind.ACCESS_POINT));
    }

    static ModelForm of(ModelDraft draft) {
        ModelBuild build = draft.build();
        ModelTerms terms = draft.terms();
        ModelEnds ends = draft.ends();
        BigDecimal amount = draft.price().amount();
        return new ModelForm(
                draft.maker(),
                draft.name(),
                draft.kind().name(),
                draft.objectId(),
                build.radios() == 0 ? "" : String.valueOf(build.radios()),
                Objects.toString(build.streams(), ""),
                build.bands(),
                build.antenna(),
                build.outdoor() ? "yes" : "",
                build.mains() ? MAINS : Objects.toString(build.poeClass(), ""),
                build.mount(),
                amount == null ? "" : amount.toPlainString(),
                draft.price().currency(),
                Objects.toString(draft.firmwareLineId(), ""),
                terms.kind(),
                terms.from(),
                Objects.toString(terms.months(), ""),
                terms.service(),
                Objects.toString(ends.sale().day(), ""),
                ends.sale().source(),
                Objects.toString(ends.software().day(), ""),
                ends.software().source(),
                Objects.toString(ends.support().day(), ""),
                ends.support().source(),
                draft.note(),
                "");
    }

    /** What the box sends that agrees to a move to that line; null for no line. */
    static String liftTo(Long line) {
        return line == null ? "no line" : line.toString();
    }

    public boolean isOutdoor() {
        return "yes".equals(outdoor);
    }

    ModelDraft draft(Entry entry) {
        String code = plain(currency).toUpperCase(Locale.ROOT);
        return new ModelDraft(
                plain(maker),
                plain(name),
                Arrays.stream(DeviceKind.values())
                        .filter(one -> one.name().equals(kind))
                        .findFirst()
                        .orElse(null),
                plain(objectId),
                build(entry),
                new ListPrice(ListPrice.usual(amount(entry), code), code),
                entry.id("firmwareLineId", Entry.text(firmwareLineId)),
                new ModelTerms(
                        plain(termsKind),
                        plain(termsFrom),
                        number(entry, "termsMonths", termsMonths),
                        plain(termsService)),
                new ModelEnds(
                        announced(entry, "endOfSale", endOfSale, endOfSaleSource),
                        announced(entry, "endOfSoftware", endOfSoftware, endOfSoftwareSource),
                        announced(entry, "endOfSupport", endOfSupport, endOfSupportSource)),
                plain(note));
    }

    private ModelBuild build(Entry entry) {
        Integer count = number(entry, "radios", radios);
        boolean mains = MAINS.equals(power);
        return new ModelBuild(
                count == null ? 0 : count,
                number(entry, "streams", streams),
                ModelBuild.plainBands(Entry.text(bands)),
                plain(antenna),
                isOutdoor(),
                mains ? null : number(entry, "poeClass", power),
                mains,
                plain(mount));
    }

    private BigDecimal amount(Entry entry) {
        String text = plain(listPrice).replace(',', '.');
        if (!text.isEmpty() && !text.matches("\\d{1,12}(\\.\\d{1,6})?")) {
            entry.fault("listPrice", "an amount such as 189.90, without currency and without thousands separators");
            return null;
        }
        return text.isEmpty() ? null : new BigDecimal(text);
    }

    private static Announced announced(Entry entry, String field, String day, String source) {
        return new Announced(day(entry, field, plain(day)), plain(source));
    }

    private static LocalDate day(Entry entry, String field, String text) {
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            entry.fault(field, "a day of the calendar as year-month-day, such as 2026-03-31");
            return null;
        }
    }

    private static Integer number(Entry entry, String field, String text) {
        return plain(text).isEmpty() ? null : Integer.valueOf(entry.number(field, text));
    }

    private static String plain(String text) {
        return Entry.text(text).strip();
    }
}
