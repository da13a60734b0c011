package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What technicians and the owner do with alarms. */
@Path("/api/v1/alarms")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.ALARMS)
@Tag(name = "Alarms")
class AlarmActsApi {

    private final AlarmDesk desk;
    private final AlarmBook book;
    private final Caller caller;

    AlarmActsApi(AlarmDesk desk, AlarmBook book, Caller caller) {
        this.desk = desk;
        this.book = book;
        this.caller = caller;
    }

    /** A note. */
    @Schema(name = "AlarmNote")
    record Note(
            @Schema(description = "At most 4,000 characters", examples = "The carrier works on it.")
            String text) implements ApiBody {}

    /** Putting aside. */
    @Schema(name = "AlarmShelf")
    record Shelf(
            @Schema(description = "In the future, at most 90 days", examples = "2026-03-05T07:00:00Z")
            Instant until,

            @Schema(examples = "Builders on site until Thursday")
            String reason)
            implements ApiBody {}

    @POST
    @Path("{alarm}/acknowledge")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Says that somebody deals with an alarm; the note may be empty")
    public AlarmJson acknowledgeAlarm(@RestPath long alarm, Note note) {
        return shown(alarm, desk.acknowledge(caller.scope(), alarm, Given.text(note.text())));
    }

    @POST
    @Path("{alarm}/take")
    @Operation(summary = "Takes an alarm, and acknowledges it by that")
    public AlarmJson takeAlarm(@RestPath long alarm) {
        return shown(alarm, desk.take(caller.scope(), alarm));
    }

    @POST
    @Path("{alarm}/release")
    @Operation(summary = "Gives an alarm back: nobody has it any more")
    public AlarmJson releaseAlarm(@RestPath long alarm) {
        return shown(alarm, desk.release(caller.scope(), alarm));
    }

    @POST
    @Path("{alarm}/note")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Adds a note to an alarm")
    public AlarmJson noteOnAlarm(@RestPath long alarm, Note note) {
        return shown(alarm, desk.note(caller.scope(), alarm, Given.text(note.text())));
    }

    @POST
    @Path("{alarm}/shelve")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Puts an alarm aside until a time; it tells nobody until then")
    public AlarmJson shelveAlarm(@RestPath long alarm, Shelf shelf) {
        Instant until = Given.or(shelf.until(), Instant.EPOCH);
        return shown(alarm, desk.shelve(caller.scope(), alarm, until, Given.text(shelf.reason())));
    }

    @POST
    @Path("{alarm}/unshelve")
    @Operation(summary = "Takes an alarm off the shelf before its time")
    public AlarmJson unshelveAlarm(@RestPath long alarm) {
        return shown(alarm, desk.unshelve(caller.scope(), alarm));
    }

    @POST
    @Path("{alarm}/close")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Says that an alarm is held to be resolved; it stays active until the fault is gone")
    public AlarmJson closeAlarm(@RestPath long alarm, Note note) {
        return shown(alarm, desk.close(caller.scope(), alarm, Given.text(note.text())));
    }

    private AlarmJson shown(long alarm, boolean found) {
        if (!found) {
            throw new NotFoundException();
        }
        return book.find(caller.scope(), alarm).map(AlarmJson::of).orElseThrow(NotFoundException::new);
    }
}
