package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.TokenScope;
import org.roundsman.readings.FleetBoard;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.EventSearch;

/** Devices as they are now, and what happened to them. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Devices")
class DevicesApi {

    private final FleetBoard board;
    private final EventSearch events;
    private final DeviceAnswers answers;
    private final Caller caller;

    DevicesApi(FleetBoard board, EventSearch events, DeviceAnswers answers, Caller caller) {
        this.board = board;
        this.events = events;
        this.answers = answers;
        this.caller = caller;
    }

    /** Something that happened to a device. */
    @Schema(name = "DeviceEvent")
    record EventJson(
            @Schema(examples = "90210") long id,
            @Schema(examples = "2026-03-04T11:58:00Z") Instant at,
            @Schema(examples = "fact-changed") String kind,
            @Schema(examples = "Firmware changed") String title,
            @Schema(examples = "4.2.0") String old,

            @Schema(name = "new", examples = "4.2.1") @com.fasterxml.jackson.annotation.JsonProperty("new")
            String fresh,

            @Schema(examples = "") String detail) {

        static EventJson of(EventSearch.Numbered one) {
            return new EventJson(
                    one.id(),
                    one.event().at(),
                    Choice.word(one.event().kind()),
                    one.event().title(),
                    one.event().old(),
                    one.event().fresh(),
                    one.event().detail());
        }
    }

    @GET
    @Path("devices")
    @Operation(summary = "Lists devices with their conditions")
    public RestResponse<Listing<DeviceJson.Line>> listDevices(
            UriInfo address, @BeanParam Paging paging, @BeanParam DeviceFilter filter) {
        List<DeviceJson.Line> found =
                board.devicesAfter(caller.scope(), filter.query(), paging.afterId(), paging.size() + 1).stream()
                        .map(DeviceJson.Line::of)
                        .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("devices/{device}")
    @Operation(summary = "Shows a device with its facts and radios")
    public RestResponse<DeviceJson> showDevice(@RestPath long device) {
        return answers.ok(device);
    }

    @GET
    @Path("devices/{device}/events")
    @Operation(summary = "Lists what happened to a device, newest first")
    public RestResponse<Listing<EventJson>> listDeviceEvents(
            UriInfo address,
            @BeanParam Paging paging,
            @RestPath long device,
            @RestQuery @Parameter(description = "Only events of that kind, such as restarted") String kind) {
        board.device(caller.scope(), device).orElseThrow(NotFoundException::new);
        List<EventJson> found = events
                .before(device, Choice.filter(EventKind.class, "kind", kind), paging.afterId(), paging.size() + 1)
                .stream()
                .map(EventJson::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }
}
