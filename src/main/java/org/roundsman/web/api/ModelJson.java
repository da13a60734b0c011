package org.roundsman.web.api;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.catalogue.TermsWords;
import org.roundsman.fleet.Model;

/** What a maker sells. */
@Schema(name = "Model")
record ModelJson(
        @Schema(examples = "2") long id,
        @Schema(examples = "Tamarack Radio") String maker,
        @Schema(examples = "TR-22") String name,
        @Schema(examples = "access-point") String kind,

        @Schema(
                nullable = true,
                description = "The sysObjectID that it answers with",
                examples = "1.3.6.1.4.1.32473.2.22")
        String objectId,

        @Schema(examples = "2") int radios,

        @Schema(nullable = true, description = "Spatial streams of the strongest radio", examples = "2")
        Integer streams,

        @Schema(description = "Bands in GHz", examples = "2.4,5")
        String bands,

        @Schema(description = "internal, external, or empty where not known", examples = "internal")
        String antenna,

        boolean outdoor,

        @Schema(nullable = true, description = "IEEE 802.3; null for mains or not known", examples = "3")
        Integer poeClass,

        @Schema(description = "Fed from the mains") boolean mains,

        @Schema(description = "What holds it", examples = "ceiling rail")
        String mount,

        @Schema(nullable = true, description = "Of one piece, without tax; null for viewers", examples = "249.00")
        BigDecimal listPrice,

        @Schema(nullable = true, description = "ISO 4217; null for viewers", examples = "EUR")
        String currency,

        @Schema(nullable = true, examples = "1") Long firmwareLineId,

        @Schema(nullable = true, examples = "TR access points")
        String firmwareLine,

        @Schema(nullable = true) Terms warranty,
        @Schema(nullable = true) End endOfSale,
        @Schema(nullable = true) End endOfSoftware,
        @Schema(nullable = true) End endOfSupport,

        @Schema(nullable = true, description = "Null for viewers")
        String note) {

    /** The warranty that it is sold with. */
    @Schema(name = "WarrantyTerms")
    record Terms(
            @Schema(description = "months, lifetime-after-sale, lifetime-of-owner or none", examples = "months")
            String kind,

            @Schema(
                    nullable = true,
                    description = "purchase, delivery, installation or first-seen",
                    examples = "purchase")
            String from,

            @Schema(nullable = true, examples = "36") Integer months,

            @Schema(nullable = true, description = "advance or bench", examples = "advance")
            String service,

            @Schema(examples = "36 months from purchase, advance replacement")
            String words) {

        private static Terms of(Model model) {
            return TermsWords.of(model)
                    .map(words -> new Terms(
                            ModelEntryJson.word(model.termsKind),
                            ModelEntryJson.word(model.termsFrom),
                            model.termsMonths == null ? null : model.termsMonths.intValue(),
                            ModelEntryJson.word(model.termsService),
                            words))
                    .orElse(null);
        }
    }

    /** Something that the maker ends. */
    @Schema(name = "AnnouncedEnd")
    record End(
            @Schema(description = "The last day", examples = "2029-03-31")
            LocalDate day,

            @Schema(description = "Where it stands written", examples = "notice TR-2026-03 of the maker (invented)")
            String source) {

        private static End of(LocalDate day, String source) {
            return day == null ? null : new End(day, source);
        }
    }

    /**
     * @param prices whether the caller may see what things cost
     */
    static ModelJson of(Catalogue.Entry entry, boolean prices) {
        Model model = entry.model();
        return new ModelJson(
                model.id,
                model.maker,
                model.name,
                Choice.word(model.kind),
                model.objectId,
                model.radios,
                model.streams == null ? null : model.streams.intValue(),
                model.bands,
                model.antenna,
                model.outdoor,
                model.poeClass == null ? null : model.poeClass.intValue(),
                model.mains,
                model.mount,
                prices ? model.listPrice : null,
                prices && model.listPrice != null ? model.currency : null,
                model.firmwareLineId,
                entry.line().map((FirmwareLine line) -> line.name).orElse(null),
                Terms.of(model),
                End.of(model.endOfSale, model.endOfSaleSource),
                End.of(model.endOfSoftware, model.endOfSoftwareSource),
                End.of(model.endOfSupport, model.endOfSupportSource),
                prices ? model.note : null);
    }
}
