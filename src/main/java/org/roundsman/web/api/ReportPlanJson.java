package org.roundsman.web.api;

import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.dispatch.BrandDraft;
import org.roundsman.dispatch.PlanDraft;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.reports.ReportLook;

/** When and how a customer's reports are made. */
@Schema(name = "ReportPlan")
record ReportPlanJson(
        @Schema(examples = "7") long customerId,

        @Schema(description = "The past month is built by itself", examples = "true")
        boolean active,

        @Schema(description = "Of the month, 1 to 28", examples = "2")
        int day,

        @Schema(description = "0 to 23, by the clock of timeZone", examples = "6")
        int hour,

        @Schema(description = "IANA name", examples = "Europe/London")
        String timeZone,

        @Schema(description = "BCP 47 tag", examples = "en-GB")
        String language,

        @Schema(description = "a4 or letter", examples = "a4")
        String paper,

        @Schema(examples = "[\"practice@pebblegate.example\"]")
        List<String> recipients,

        @Schema(description = "It is sent only after somebody has reviewed it", examples = "true")
        boolean approval,

        @Schema(description = "Whether list prices are shown", examples = "false")
        boolean costs,

        @Schema(description = "6 to 120, counted from the last day of the report", examples = "36")
        int keepMonths) {

    static ReportPlanJson of(ReportPlan plan) {
        return new ReportPlanJson(
                plan.customerId(),
                plan.active(),
                plan.day(),
                plan.hour(),
                plan.zone().getId(),
                plan.language().toLanguageTag(),
                Choice.word(plan.paper()),
                plan.recipients(),
                plan.approval(),
                plan.costs(),
                plan.keepMonths());
    }

    /** What can be changed about it. */
    @Schema(name = "ReportPlanEntry")
    record Entry(
            @Schema(examples = "true") Boolean active,
            @Schema(description = "1 to 28", examples = "2") Integer day,
            @Schema(description = "0 to 23", examples = "6") Integer hour,

            @Schema(description = "IANA name", examples = "Europe/London")
            String timeZone,

            @Schema(description = "BCP 47 tag", examples = "en-GB")
            String language,

            @Schema(description = "a4 or letter", examples = "a4")
            String paper,

            @Schema(examples = "[\"practice@pebblegate.example\"]")
            List<String> recipients,

            @Schema(examples = "true") Boolean approval,
            @Schema(examples = "false") Boolean costs,

            @Schema(description = "6 to 120", examples = "36")
            Integer keepMonths)
            implements ApiBody {

        /** No plan takes it, so that the field is named. */
        private static final int NONE = -1;

        static Entry of(ReportPlan plan) {
            return new Entry(
                    plan.active(),
                    plan.day(),
                    plan.hour(),
                    plan.zone().getId(),
                    plan.language().toLanguageTag(),
                    Choice.word(plan.paper()),
                    plan.recipients(),
                    plan.approval(),
                    plan.costs(),
                    plan.keepMonths());
        }

        PlanDraft draft() {
            return new PlanDraft(
                    Given.or(active, false),
                    Given.or(day, NONE),
                    Given.or(hour, NONE),
                    Given.text(timeZone),
                    Given.text(language),
                    Choice.of(ReportLook.PaperSize.class, Given.text(paper)),
                    Given.list(recipients),
                    Given.or(approval, true),
                    Given.or(costs, false),
                    Given.or(keepMonths, NONE));
        }
    }

    /** How the firm or a customer is presented; its logo is kept on the page of the same. */
    @Schema(name = "ReportBrand")
    record Brand(
            @Schema(examples = "Fernhollow Networks") String name,

            @Schema(description = "As #rrggbb, or empty for the usual one", examples = "#0b5d5b")
            String colour,

            @Schema(
                    description = "Address and whom to ask",
                    examples = "[\"4 Fernhollow Lane\", \"help@fernhollow.example\"]")
            List<String> lines,

            @Schema(description = "Media type of the logo, or empty", examples = "image/png")
            String logoType) {

        static Brand of(ReportLook.Brand brand) {
            return new Brand(brand.name(), brand.colour(), brand.lines(), brand.logoType());
        }
    }

    /** What can be changed about a brand by a program. */
    @Schema(name = "ReportBrandEntry")
    record BrandEntry(
            @Schema(examples = "Fernhollow Networks") String name,

            @Schema(description = "As #rrggbb, or empty", examples = "#0b5d5b")
            String colour,

            @Schema(examples = "[\"4 Fernhollow Lane\"]") List<String> lines)
            implements ApiBody {

        static BrandEntry of(ReportLook.Brand brand) {
            return new BrandEntry(brand.name(), brand.colour(), brand.lines());
        }

        BrandDraft draft() {
            return new BrandDraft(Given.text(name), Given.text(colour), Optional.empty(), false, Given.list(lines));
        }
    }
}
