package org.roundsman.web.api;

import jakarta.ws.rs.QueryParam;
import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.warranty.CoverSearch;
import org.roundsman.warranty.CoverStatus;

/** What narrows the list of units. */
public class WarrantyFilter {
    @QueryParam("customer")
    @Parameter(
            description = "Only units of that customer",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String customer;

    @QueryParam("site")
    @Parameter(description = "Only units at that site", schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String site;

    @QueryParam("model")
    @Parameter(
            description = "Only units of that model; 0 for those whose model is not known",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String model;

    @QueryParam("month")
    @Parameter(
            description = "Only cover that ends in that month, today or later",
            schema = @Schema(type = SchemaType.STRING, examples = "2027-02"))
    String month;

    @QueryParam("status")
    @Parameter(
            description = "Only units with that status: ends-within-30, ends-within-60, ends-within-90,"
                    + " ends-within-180, covered, ended, or missing",
            schema = @Schema(type = SchemaType.STRING, examples = "ended"))
    String status;

    @QueryParam("pastSupport")
    @Parameter(
            description = "Only units whose maker gives no help any more",
            schema = @Schema(type = SchemaType.BOOLEAN, defaultValue = "false"))
    boolean pastSupport;

    CoverSearch search() {
        return new CoverSearch(
                id("customer", customer),
                id("site", site),
                id("model", model),
                yearMonth(),
                Choice.filter(CoverStatus.class, "status", status).map(Set::of).orElse(Set.of()),
                pastSupport,
                "");
    }

    private static OptionalLong id(String field, String text) {
        Long id = Given.number(field, text);
        return id == null ? OptionalLong.empty() : OptionalLong.of(id);
    }

    private Optional<YearMonth> yearMonth() {
        try {
            return Given.text(month).isEmpty() ? Optional.empty() : Optional.of(YearMonth.parse(month));
        } catch (DateTimeException e) {
            throw new ProblemException(Problem.refused(Map.of("month", "a month, such as 2027-02")));
        }
    }
}
