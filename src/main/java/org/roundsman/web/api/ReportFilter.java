package org.roundsman.web.api;

import jakarta.ws.rs.QueryParam;
import java.util.Optional;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.ShelfSearch;

/** What narrows the list of reports. */
public class ReportFilter {
    @QueryParam("customer")
    @Parameter(
            description = "Only reports of that customer",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String customer;

    @QueryParam("month")
    @Parameter(
            description = "Only reports whose first day lies in that month",
            schema = @Schema(type = SchemaType.STRING, examples = "2026-10"))
    String month;

    @QueryParam("state")
    @Parameter(
            description = "Only reports in that state: waiting, building, to-review, reviewed, sending, sent or failed",
            schema = @Schema(type = SchemaType.STRING, examples = "to-review"))
    String state;

    ShelfSearch search() {
        Long id = Given.number("customer", customer);
        return new ShelfSearch(
                id == null ? OptionalLong.empty() : OptionalLong.of(id),
                Given.text(month).isEmpty() ? Optional.empty() : Optional.of(ReportEntries.month("month", month)),
                Choice.filter(ReportState.class, "state", state));
    }
}
