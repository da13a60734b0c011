package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.people.TokenScope;
import org.roundsman.web.api.AlarmPastJson.Act;
import org.roundsman.web.api.AlarmPastJson.Change;
import org.roundsman.web.api.AlarmPastJson.EpisodeJson;
import org.roundsman.web.api.AlarmPastJson.Type;

/** Alarms and their past. */
@Path("/api/v1")
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
    @Path("alarms")
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
    @Path("alarms/{alarm}")
    @Operation(summary = "Shows an alarm with its current or last episode")
    public AlarmJson showAlarm(@RestPath long alarm) {
        return book.find(caller.scope(), alarm).map(AlarmJson::of).orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("alarms/{alarm}/episodes")
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
    @Path("alarms/{alarm}/changes")
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
    @Path("alarms/{alarm}/acts")
    @Operation(summary = "Lists what people did with an alarm, the last first")
    public RestResponse<Listing<Act>> listAlarmActs(UriInfo address, @BeanParam Paging paging, @RestPath long alarm) {
        showAlarm(alarm);
        List<Act> found = book.acts(caller.scope(), alarm, before(paging), paging.size() + 1).stream()
                .map(Act::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("alarm-types")
    @Operation(summary = "Lists the kinds of alarms that there are (RFC 8632: alarm inventory)")
    public RestResponse<Listing<Type>> listAlarmTypes(UriInfo address, @BeanParam Paging paging) {
        List<Type> found = Stream.of(AlarmType.values())
                .map(Type::of)
                .filter(type -> type.id().compareTo(paging.after) > 0)
                .sorted(Comparator.comparing(Type::id))
                .limit(paging.size() + 1L)
                .toList();
        return Listing.of(address, paging, found, Type::id);
    }

    private static long before(Paging paging) {
        long after = paging.afterId();
        return after == 0 ? Long.MAX_VALUE : after;
    }
}
