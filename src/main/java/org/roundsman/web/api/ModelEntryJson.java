package org.roundsman.web.api;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelEnds.Announced;
import org.roundsman.fleet.ModelTerms;

/** A model as entered. Fields are called as those that are refused. */
@Schema(name = "ModelEntry")
record ModelEntryJson(
        @Schema(required = true, maxLength = 120, examples = "Tamarack Radio")
        String maker,

        @Schema(required = true, maxLength = 120, examples = "TR-22")
        String name,

        @Schema(required = true, description = "access-point, network-switch or gateway", examples = "access-point")
        String kind,

        @Schema(
                nullable = true,
                description = "The sysObjectID that it answers with",
                examples = "1.3.6.1.4.1.32473.1.2")
        String objectId,

        @Schema(minimum = "0", maximum = "8", examples = "2")
        Integer radios,

        @Schema(nullable = true, minimum = "1", maximum = "16", examples = "2")
        Integer streams,

        @Schema(description = "In GHz between commas, out of 2.4, 5, 6, 60", examples = "2.4,5")
        String bands,

        @Schema(description = "internal, external, or empty where not known", examples = "internal")
        String antenna,

        Boolean outdoor,

        @Schema(nullable = true, minimum = "0", maximum = "8", examples = "3")
        Integer poeClass,

        @Schema(description = "Never together with a PoE class")
        Boolean mains,

        @Schema(maxLength = 120, examples = "ceiling rail") String mount,

        @Schema(nullable = true, description = "Of one piece, without tax", examples = "249.00")
        BigDecimal listPrice,

        @Schema(description = "ISO 4217; needed with a price", examples = "EUR")
        String currency,

        @Schema(nullable = true, examples = "1") Long firmwareLineId,

        @Schema(
                description = "months, lifetime-after-sale, lifetime-of-owner, none, or empty where not known",
                examples = "months")
        String termsKind,

        @Schema(description = "purchase, delivery, installation or first-seen; with months only", examples = "purchase")
        String termsFrom,

        @Schema(nullable = true, minimum = "1", maximum = "600", examples = "36")
        Integer termsMonths,

        @Schema(description = "advance, bench, or empty where not known", examples = "advance")
        String termsService,

        @Schema(nullable = true, examples = "2029-03-31") LocalDate endOfSale,

        @Schema(description = "Needed with the day", examples = "notice TR-2026-03 of the maker (invented)")
        String endOfSaleSource,

        @Schema(nullable = true) LocalDate endOfSoftware,
        String endOfSoftwareSource,
        @Schema(nullable = true) LocalDate endOfSupport,
        String endOfSupportSource,
        @Schema(maxLength = 2000) String note)
        implements ApiBody {

    static ModelEntryJson of(ModelDraft draft) {
        ModelBuild build = draft.build();
        ModelEnds ends = draft.ends();
        return new ModelEntryJson(
                draft.maker(),
                draft.name(),
                Choice.word(draft.kind()),
                draft.objectId().isEmpty() ? null : draft.objectId(),
                build.radios(),
                build.streams(),
                build.bands(),
                build.antenna(),
                build.outdoor(),
                build.poeClass(),
                build.mains(),
                build.mount(),
                draft.price().amount(),
                draft.price().currency(),
                draft.firmwareLineId(),
                Given.text(word(draft.terms().kind())),
                Given.text(word(draft.terms().from())),
                draft.terms().months(),
                Given.text(word(draft.terms().service())),
                ends.sale().day(),
                ends.sale().source(),
                ends.software().day(),
                ends.software().source(),
                ends.support().day(),
                ends.support().source(),
                draft.note());
    }

    ModelDraft draft() {
        String code = plain(currency).toUpperCase(Locale.ROOT);
        return new ModelDraft(
                plain(maker),
                plain(name),
                Choice.of(DeviceKind.class, kind),
                plain(objectId),
                new ModelBuild(
                        Given.or(radios, 0),
                        streams,
                        ModelBuild.plainBands(plain(bands)),
                        plain(antenna),
                        Given.or(outdoor, false),
                        poeClass,
                        Given.or(mains, false),
                        plain(mount)),
                new ListPrice(ListPrice.usual(listPrice, code), code),
                firmwareLineId,
                new ModelTerms(kept(termsKind), kept(termsFrom), termsMonths, kept(termsService)),
                new ModelEnds(
                        new Announced(endOfSale, plain(endOfSaleSource)),
                        new Announced(endOfSoftware, plain(endOfSoftwareSource)),
                        new Announced(endOfSupport, plain(endOfSupportSource))),
                plain(note));
    }

    /** As the API writes a kept word; null for none. */
    static String word(String kept) {
        return kept.isEmpty() ? null : kept.toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String kept(String word) {
        return plain(word).toUpperCase(Locale.ROOT).replace('-', '_');
    }

    private static String plain(String text) {
        return Given.text(text).strip();
    }
}
