package org.roundsman.web.api;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.reports.ReportTable;

/** One table of a report. */
@Schema(name = "ReportTable")
record ReportTableJson(
        @Schema(examples = "outages") String key,

        @Schema(description = "Names, with the unit where there is one", examples = "[\"site\", \"silence-seconds\"]")
        List<String> columns,

        @Schema(
                description = "One value a column: a text, a number, a day, a moment, or null where it is not known",
                examples = "[[\"Canal Bridge\", 28500]]")
        List<List<Object>> rows) {

    static ReportTableJson of(ReportTable table) {
        return new ReportTableJson(table.key(), table.columns(), table.rows());
    }

    /** A table that a report has. */
    @Schema(name = "ReportTableName")
    record Named(
            @Schema(examples = "outages") String key,

            @Schema(examples = "[\"site\", \"silence-seconds\"]")
            List<String> columns,

            @Schema(description = "How many rows", examples = "2")
            int rows) {

        static Named of(ReportTable table) {
            return new Named(table.key(), table.columns(), table.rows().size());
        }
    }
}
