package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.notices.NoticePeople;
import org.roundsman.notices.Outbox;
import org.roundsman.notices.OutboxState;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What the caller is told, and the messages that were sent to people. No single customer's. */
@Path("/api/v1/notices")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Notices")
class NoticesApi {

    private final NoticePeople people;
    private final Outbox outbox;
    private final Caller caller;
    private final Tagged tagged;

    NoticesApi(NoticePeople people, Outbox outbox, Caller caller, Tagged tagged) {
        this.people = people;
        this.outbox = outbox;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Path("choices")
    @Operation(summary = "Shows what the person of the token is told, and how")
    public RestResponse<NoticeJson.Choices> showNoticeChoices() {
        caller.requireEveryone();
        return answer();
    }

    @PATCH
    @Path("choices")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes what the person of the token is told, and how")
    public RestResponse<NoticeJson.Choices> changeNoticeChoices(
            @RequestBody(content = @Content(schema = @Schema(implementation = NoticeJson.Choices.class)))
                    MergePatch changes) {
        caller.requireEveryone();
        NoticeJson.Choices now = NoticeJson.Choices.of(people.of(caller.person()));
        tagged.requireUnchanged(now);
        people.choose(caller.person(), changes.onto(now).choices());
        return answer();
    }

    private RestResponse<NoticeJson.Choices> answer() {
        NoticeJson.Choices now = NoticeJson.Choices.of(people.of(caller.person()));
        return tagged.ok(now, now);
    }

    @GET
    @Path("messages")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Operation(summary = "Lists messages to people, the newest first")
    public RestResponse<Listing<NoticeJson.Message>> listMessages(
            UriInfo address, @BeanParam Paging paging, @RestQuery String state) {
        caller.requireEveryone();
        Optional<OutboxState> only = Choice.filter(OutboxState.class, "state", state);
        long from = paging.afterId();
        List<NoticeJson.Message> found =
                outbox.before(only, from == 0 ? Long.MAX_VALUE : from, paging.size() + 1).stream()
                        .map(NoticeJson.Message::of)
                        .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("messages/{message}/send-again")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Has a message that was given up tried again")
    public void sendMessageAgain(@RestPath long message) {
        caller.requireEveryone();
        require(outbox.sendAgain(message));
    }

    @POST
    @Path("messages/{message}/set-aside")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Dismisses a message that was given up")
    public void dismissMessage(@RestPath long message) {
        caller.requireEveryone();
        require(outbox.dismiss(message));
    }

    private static void require(boolean known) {
        if (!known) {
            throw new NotFoundException();
        }
    }
}
