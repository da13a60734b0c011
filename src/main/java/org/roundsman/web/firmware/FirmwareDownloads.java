package org.roundsman.web.firmware;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.WorkItem;
import org.roundsman.people.Role;

/** The lists as CSV: all that the search finds, not only a page of it. */
@Path("/firmware")
@Produces("text/csv")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class FirmwareDownloads {

    private static final List<String> DEVICES = List.of(
            "customer",
            "site",
            "device",
            "kind",
            "model",
            "firmware_line",
            "version",
            "first_read_utc",
            "status",
            "reason",
            "security_fix_missing",
            "mixed_site",
            "recommended",
            "days_behind");

    private static final List<String> WORK = List.of(
            "order",
            "risk",
            "customer",
            "site",
            "firmware_line",
            "devices",
            "of",
            "run",
            "recommended",
            "days_behind",
            "clients_at_busiest",
            "reason",
            "windows_utc",
            "without_window");

    private final FirmwareViews views;

    FirmwareDownloads(FirmwareViews views) {
        this.views = views;
    }

    @GET
    @Path("devices.csv")
    public Response devices(@BeanParam FirmwareSearch search) {
        return csv(
                "firmware.csv",
                DEVICES,
                views.found(search).stream().map(FirmwareDownloads::row).toList());
    }

    @GET
    @Path("work.csv")
    public Response work() {
        List<WorkItem> items = views.items();
        return csv(
                "firmware-work.csv",
                WORK,
                java.util.stream.IntStream.range(0, items.size())
                        .mapToObj(i -> row(i + 1, items.get(i)))
                        .toList());
    }

    private static List<String> row(FirmwareState state) {
        return List.of(
                state.place().customer(),
                state.place().site(),
                state.device(),
                state.kind().word(),
                state.place().model(),
                state.place().line(),
                state.version(),
                state.since().map(Object::toString).orElse(""),
                state.status().word(),
                state.reason(),
                state.security() ? "yes" : "no",
                state.mixed() ? "yes" : "no",
                state.target(),
                state.daysBehind().isPresent()
                        ? String.valueOf(state.daysBehind().getAsLong())
                        : "");
    }

    private static List<String> row(int order, WorkItem item) {
        return List.of(
                String.valueOf(order),
                item.risk().word(),
                item.place().customer(),
                item.place().site(),
                item.place().line(),
                String.valueOf(item.devices().size()),
                String.valueOf(item.of()),
                WorkLine.runs(item),
                WorkLine.targets(item),
                item.daysBehind().isPresent() ? String.valueOf(item.daysBehind().getAsLong()) : "",
                item.people().isPresent() ? String.valueOf(item.people().getAsInt()) : "",
                item.reason(),
                String.join(
                        "; ",
                        item.fits().stream()
                                .map(fit -> fit.from() + " to " + fit.to() + ": " + fit.devices())
                                .toList()),
                String.valueOf(item.left()));
    }

    private static Response csv(String name, List<String> head, List<List<String>> rows) {
        return Response.ok(FirmwareCsv.text(head, rows))
                .type("text/csv; charset=utf-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }
}
