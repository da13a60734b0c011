package org.roundsman.web.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun;

/** An upload with its dry run, as it stands. */
@Schema(name = "Import")
record ImportJson(
        @Schema(examples = "31") long id,

        @Schema(
                description = "checking: the dry run is being made. checked: it is there, and nothing is written."
                        + " applying: it is being written. applied: all of it is. failed: there is no dry run",
                examples = "checked")
        String state,

        @Schema(description = "What a person should know of the state, or empty", examples = "")
        String remark,

        @Schema(examples = "2026-03-04T09:31:07Z") Instant startedAt,

        @Schema(nullable = true, description = "When the state was reached; null while work goes on")
        Instant finishedAt,

        List<File> files,
        Counts counts,

        @Schema(
                description = "Rows that came out differently than in the dry run before, after a refused apply",
                examples = "0")
        int moved,

        @Schema(description = "Whether it can be applied: no row is refused, and one would write something")
        boolean applicable,

        @Schema(description = "Rows done in the present piece of work", examples = "117")
        int done,

        @Schema(description = "Rows of the present piece of work", examples = "117")
        int total) {

    /** A file as it was read. */
    @Schema(name = "ImportFile")
    record File(
            @Schema(examples = "devices.csv") String name,
            @Schema(examples = "devices") String table,
            @Schema(examples = "UTF-8") String encoding,

            @Schema(description = "comma, semicolon or tab", examples = "comma")
            String delimiter,

            @Schema(description = "Without the header and empty rows", examples = "117")
            int rows) {}

    /** Rows by what they would do, or did. */
    @Schema(name = "ImportCounts")
    record Counts(
            @JsonProperty("new") @Schema(examples = "100") int fresh,
            @Schema(examples = "9") int changed,
            @Schema(examples = "8") int same,
            @Schema(examples = "0") int refused) {}

    /** What one row would do. */
    @Schema(name = "ImportRow")
    record Row(
            @Schema(examples = "devices.csv") String file,

            @Schema(description = "Its number in the file; the header is row 1", examples = "17")
            int row,

            @Schema(examples = "devices") String table,
            @Schema(examples = "Hall AP") String name,

            @Schema(description = "The site and the customer as the row names them", examples = "Harbour clinic")
            String within,

            @Schema(description = "new, changed, same or refused", examples = "changed")
            String outcome,

            @Schema(description = "Column by column; of a new one, what it holds")
            List<AuditApi.FieldJson> changes,

            @Schema(description = "Why it is refused") List<Fault> faults,

            @Schema(description = "Whether it came out differently in the dry run before")
            boolean moved) {

        static Row of(ImportRow row) {
            return new Row(
                    row.file(),
                    row.row(),
                    row.table().word(),
                    row.name(),
                    row.within(),
                    row.outcome().word(),
                    row.changes().stream()
                            .map(c -> new AuditApi.FieldJson(c.field(), c.old(), c.fresh()))
                            .toList(),
                    row.faults().entrySet().stream()
                            .map(f -> new Fault(f.getKey(), row.given().getOrDefault(f.getKey(), ""), f.getValue()))
                            .toList(),
                    row.moved());
        }
    }

    /** What is wrong with a row. */
    @Schema(name = "ImportFault")
    record Fault(
            @Schema(description = "Empty for the row as a whole", examples = "port")
            String column,

            @Schema(
                    description = "What the file holds there, shortened to " + ImportRow.LONGEST_GIVEN
                            + " characters; empty where it holds nothing",
                    examples = "70000")
            String given,

            @Schema(examples = "from 1 to 65535") String reason) {}

    static ImportJson of(ImportRun run) {
        return new ImportJson(
                run.id(),
                Choice.word(run.state()),
                run.remark(),
                run.startedAt(),
                run.finishedAt().orElse(null),
                run.files().stream()
                        .map(f -> new File(f.name(), f.table().word(), f.encoding(), f.delimiter(), f.rows()))
                        .toList(),
                new Counts(
                        run.count(ImportOutcome.NEW),
                        run.count(ImportOutcome.CHANGED),
                        run.count(ImportOutcome.SAME),
                        run.count(ImportOutcome.REFUSED)),
                run.moved(),
                run.applicable(),
                run.progress().done(),
                run.progress().total());
    }
}
