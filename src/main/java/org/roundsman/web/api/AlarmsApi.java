package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.people.TokenScope;
import org.roundsman.web.api.AlarmPastJson.Act;
import org.roundsman.web.api.AlarmPastJson.Change;
import org.roundsman.web.api.AlarmPastJson.EpisodeJson;

/** Alarms and their past. */
@Path("/api/v1/alarms")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Alarms")
class AlarmsApi {

    private final AlarmBook book;
    private final Caller caller;

    AlarmsApi(AlarmBook book, Caller caller) {
        this.book = book;
        this.caller = caller;
    }

    @GET
    @Operation(
            summary = "Lists alarms, each time that they were raised, the last first",
            description = "An alarm that was raised several times comes several times, with the same id and other"
                    + " episodes. With state=active each comes once.")
    public RestResponse<Listing<AlarmJson>> listAlarms(
            UriInfo address, @BeanParam Paging paging, @BeanParam AlarmFilter filter) {
        List<AlarmJson> found = book.search(caller.scope(), filter.search(), before(paging), paging.size() + 1).stream()
                .map(AlarmJson::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.episodeId()));
    }

    @GET
    @Path("{alarm}")
    @Operation(summary = "Shows an alarm with its current or last episode")
    public AlarmJson showAlarm(@RestPath long alarm) {
        return book.find(caller.scope(), alarm).map(AlarmJson::of).orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("{alarm}/episodes")
    @Operation(summary = "Lists the times that an alarm was active, the last first")
    public RestResponse<Listing<EpisodeJson>> listAlarmEpisodes(
            UriInfo address, @BeanParam Paging paging, @RestPath long alarm) {
        showAlarm(alarm);
        List<EpisodeJson> found = book.episodes(caller.scope(), alarm, before(paging), paging.size() + 1).stream()
                .map(EpisodeJson::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{alarm}/changes")
    @Operation(summary = "Lists the status changes of an alarm, the last first")
    public RestResponse<Listing<Change>> listAlarmChanges(
            UriInfo address, @BeanParam Paging paging, @RestPath long alarm) {
        showAlarm(alarm);
        List<Change> found = book.changes(caller.scope(), alarm, before(paging), paging.size() + 1).stream()
                .map(Change::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{alarm}/acts")
    @Operation(summary = "Lists what people did with an alarm, the last first")
    public RestResponse<Listing<Act>> listAlarmActs(UriInfo address, @BeanParam Paging paging, @RestPath long alarm) {
        showAlarm(alarm);
        List<Act> found = book.acts(caller.scope(), alarm, before(paging), paging.size() + 1).stream()
                .map(Act::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    private static long before(Paging paging) {
        long after = paging.afterId();
        return after == 0 ? Long.MAX_VALUE : after;
    }
}
