package org.roundsman.web.api;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.CoverStep;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.UnitModel;

/** A unit with its cover. */
@Schema(name = "WarrantyUnit")
record WarrantyJson(
        @Schema(description = "d with the id of its device, or p with that of its purchase", examples = "d417")
        String unit,

        @Schema(nullable = true, description = "Null for a purchase that stands at no device", examples = "417")
        Long deviceId,

        @Schema(nullable = true, examples = "88") Long purchaseId,
        @Schema(examples = "7") long customerId,
        @Schema(nullable = true, examples = "21") Long siteId,
        @Schema(nullable = true, examples = "3") Long modelId,

        @Schema(description = "Of the device, or empty", examples = "pier-ap-1")
        String name,

        @Schema(description = "Empty where not known", examples = "TR22-00417")
        String serial,

        @Schema(
                description =
                        "ends-within-30, ends-within-60, ends-within-90, ends-within-180, covered, ended, or missing"
                                + " (terms or date not known)",
                examples = "ends-within-90")
        String status,

        @Schema(
                type = SchemaType.STRING,
                format = "date",
                nullable = true,
                description = "The last day that is covered, inclusive; null where there is no end or it is not known",
                examples = "2027-02-28")
        LocalDate lastDay,

        @Schema(description = "How that was worked out", examples = "[\"bought 2024-02-29 + 36 months = 2027-02-28\"]")
        List<String> derivation,

        @Schema(nullable = true, description = "Of one piece, without tax; null where not known", examples = "189.90")
        BigDecimal listPrice,

        @Schema(description = "ISO 4217; empty without a price", examples = "EUR")
        String currency,

        @Schema(
                type = SchemaType.STRING,
                format = "date",
                nullable = true,
                description = "Last day of the maker's help for the model",
                examples = "2030-06-30")
        LocalDate endOfSupport) {

    static WarrantyJson of(UnitCover cover) {
        Unit unit = cover.unit();
        return new WarrantyJson(
                key(cover),
                orNull(cover.deviceId()),
                orNull(cover.purchaseId()),
                unit.customerId(),
                orNull(unit.siteId()),
                orNull(cover.modelId()),
                unit.name(),
                unit.serial(),
                Choice.word(cover.status()),
                cover.lastDay().orElse(null),
                cover.derivation().stream().map(CoverStep::text).toList(),
                unit.model().flatMap(UnitModel::listPrice).orElse(null),
                unit.model().map(UnitModel::currency).orElse(""),
                unit.model().flatMap(UnitModel::endOfSupport).orElse(null));
    }

    /** By device where there is one, else by purchase. */
    static String key(UnitCover cover) {
        return cover.deviceId().isPresent()
                ? "d" + cover.deviceId().getAsLong()
                : "p" + cover.purchaseId().orElse(0);
    }

    private static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }

    /** An extended contract. */
    @Schema(name = "WarrantyContract")
    record ContractJson(
            @Schema(examples = "5") long id,
            @Schema(examples = "7") long customerId,
            @Schema(examples = "C-1042") String number,
            @Schema(examples = "Fernhollow Networks") String supplier,

            @Schema(description = "advance, bench, or empty where not known", examples = "advance")
            String service,

            @Schema(
                    type = SchemaType.STRING,
                    format = "date",
                    description = "First day that is covered",
                    examples = "2026-01-01")
            LocalDate from,

            @Schema(
                    type = SchemaType.STRING,
                    format = "date",
                    description = "Last day that is covered",
                    examples = "2028-12-31")
            LocalDate to,

            @Schema(description = "How many units it covers", examples = "40")
            int units,

            @Schema(examples = "Invented example") String note) {

        static ContractJson of(Contract one) {
            return new ContractJson(
                    one.id(),
                    one.customerId(),
                    one.number(),
                    one.supplier(),
                    one.service().map(Choice::word).orElse(""),
                    one.from(),
                    one.to(),
                    one.units(),
                    one.note());
        }
    }
}
