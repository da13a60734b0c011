package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.traps.ReceiverState;
import org.roundsman.traps.StrangeSenders;
import org.roundsman.traps.TrapReceiver;

/** How traps and informs come in, and who sends some that are not let in. No single customer's. */
@Path("/api/v1/notifications")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Notifications")
class NotificationsApi {

    private final TrapReceiver receiver;
    private final StrangeSenders strangers;
    private final Caller caller;

    NotificationsApi(TrapReceiver receiver, StrangeSenders strangers, Caller caller) {
        this.receiver = receiver;
        this.strangers = strangers;
        this.caller = caller;
    }

    /** Whether notifications can come in. */
    @Schema(name = "NotificationReceiver")
    record Receiver(
            @Schema(description = "listening, blocked (the port cannot be had), or off", examples = "listening")
            String state,

            @Schema(nullable = true, examples = "0.0.0.0") String address,

            @Schema(nullable = true, description = "UDP", examples = "162")
            Integer port,

            @Schema(nullable = true, description = "Of that state", examples = "2026-03-04T12:00:00Z")
            Instant since,

            @Schema(description = "Why nothing comes in, with what to do; or empty", examples = "")
            String why,

            @Schema(
                    description =
                            "Messages of senders that the list of unknown senders had no room for, since the start",
                    examples = "0")
            long unlistedMessages) {

        static Receiver of(ReceiverState state, long unlisted) {
            if (state instanceof ReceiverState.Listening listening) {
                return new Receiver(
                        "listening", listening.address(), listening.port(), listening.since(), "", unlisted);
            }
            if (state instanceof ReceiverState.Blocked blocked) {
                return new Receiver("blocked", null, null, blocked.since(), blocked.why(), unlisted);
            }
            return new Receiver("off", null, null, null, "", unlisted);
        }
    }

    /** Messages of one address that were not let in for one reason. */
    @Schema(name = "UnknownSender")
    record Sender(
            @Schema(examples = "192.0.2.17") String address,
            @Schema(examples = "unknown-sender") String reason,

            @Schema(description = "The reason in words", examples = "no device has this address")
            String meaning,

            @Schema(description = "Of the last one: 1, 2 (v2c), 3, or 0 where it was not known", examples = "2")
            int version,

            @Schema(description = "Since the start", examples = "41")
            long messages,

            @Schema(examples = "2026-03-04T12:00:00Z") Instant first,
            @Schema(examples = "2026-03-04T12:07:30Z") Instant last) {

        static Sender of(StrangeSenders.Line line) {
            return new Sender(
                    line.address(),
                    Choice.word(line.reason()),
                    line.reason().text(),
                    line.version(),
                    line.messages(),
                    line.first(),
                    line.last());
        }

        /** Where a piece begins; the sign before an interface of IPv6 would be read as an escape in an address. */
        String key() {
            return address.replace('%', '~') + " " + reason;
        }
    }

    @GET
    @Path("receiver")
    @Operation(summary = "Shows whether traps and informs can come in")
    public Receiver showNotificationReceiver() {
        caller.requireEveryone();
        return Receiver.of(receiver.state(), strangers.others());
    }

    @GET
    @Path("unknown-senders")
    @Operation(summary = "Lists by address and reason how many messages were not let in since the start")
    public RestResponse<Listing<Sender>> listUnknownSenders(UriInfo address, @BeanParam Paging paging) {
        caller.requireEveryone();
        List<Sender> found = strangers.latest(strangers.size()).stream()
                .map(Sender::of)
                .filter(sender -> sender.key().compareTo(paging.after) > 0)
                .sorted(Comparator.comparing(Sender::key))
                .limit(paging.size() + 1L)
                .toList();
        return Listing.of(address, paging, found, Sender::key);
    }
}
