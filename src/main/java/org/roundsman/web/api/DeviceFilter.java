package org.roundsman.web.api;

import jakarta.ws.rs.QueryParam;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery;

/** Which devices to list. */
public class DeviceFilter {

    @QueryParam("customer")
    @Parameter(
            description = "Only devices of that customer",
            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String customer;

    @QueryParam("site")
    @Parameter(description = "Only devices of that site", schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
    String site;

    @QueryParam("kind")
    @Parameter(description = "access-point, network-switch or gateway")
    String kind;

    @QueryParam("condition")
    @Parameter(description = "answering, silent, refusing or unwatched")
    String condition;

    @QueryParam("search")
    @Parameter(description = "Words that all occur in the name, place, host, serial, MAC address, site or customer")
    String search;

    BoardQuery query() {
        return new BoardQuery(
                Given.text(search),
                Optional.ofNullable(Given.number("customer", customer)),
                Optional.ofNullable(Given.number("site", site)),
                Choice.filter(DeviceKind.class, "kind", kind),
                Choice.filter(Condition.class, "condition", condition)
                        .map(Set::of)
                        .orElse(Set.of()),
                BoardQuery.Sort.NAME,
                false,
                1,
                1);
    }
}
