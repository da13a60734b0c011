package org.roundsman.web.notices;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.notices.Outbox;
import org.roundsman.notices.OutboxLine;
import org.roundsman.notices.OutboxState;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Words;

/** What was sent, what waits, and what was given up. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class OutboxPages {

    private static final int A_PAGE = 50;
    private static final int LAST_PAGE = 10_000;

    private final Outbox outbox;
    private final MailWords mail;
    private final Clock clock;

    OutboxPages(Outbox outbox, MailWords mail, Clock clock) {
        this.outbox = outbox;
        this.mail = mail;
        this.clock = clock;
    }

    /** A message as a row shows it. */
    record Line(long id, String subject, String to, String state, String when, String trouble, boolean dead) {

        static Line of(OutboxLine line, Instant now) {
            return new Line(
                    line.id(),
                    line.subject(),
                    line.person() + ", " + line.channel(),
                    line.state().word(),
                    when(line, now),
                    trouble(line),
                    line.state() == OutboxState.DEAD);
        }

        private static String when(OutboxLine line, Instant now) {
            if (line.sentAt().isPresent()) {
                return "sent " + Words.ago(line.sentAt().get(), now);
            }
            boolean later = line.state() == OutboxState.WAITING && line.dueAt().isAfter(now);
            String made = "made " + Words.ago(line.createdAt(), now);
            return later ? made + ", due in " + Words.length(Duration.between(now, line.dueAt())) : made;
        }

        private static String trouble(OutboxLine line) {
            return line.failure().isEmpty()
                    ? ""
                    : Words.many(line.attempts(), "attempt", "attempts") + "; " + line.failure();
        }
    }

    /** A state to show alone. */
    record Tab(String value, String name, boolean chosen) {}

    /** What the page shows. */
    record Shown(List<Line> lines, List<Tab> tabs, String older, String newer, String mailTrouble, boolean narrowed) {}

    @CheckedTemplate(basePath = "notices")
    static class Templates {
        private Templates() {}

        static native TemplateInstance outbox(Shown shown);
    }

    @GET
    @Path("notices/outbox")
    public TemplateInstance messages(@RestQuery String state, @RestQuery Integer page) {
        Optional<OutboxState> only = Arrays.stream(OutboxState.values())
                .filter(one -> one.name().equalsIgnoreCase(state))
                .findFirst();
        int number = page == null ? 1 : Math.max(1, Math.min(LAST_PAGE, page));
        Page<OutboxLine> found = outbox.page(only, number, A_PAGE);
        Instant now = clock.instant();
        return Templates.outbox(new Shown(
                found.items().stream().map(line -> Line.of(line, now)).toList(),
                tabs(only),
                found.hasNext() ? address(only, number + 1) : "",
                found.hasPrevious() ? address(only, number - 1) : "",
                mail.trouble(),
                only.isPresent()));
    }

    private List<Tab> tabs(Optional<OutboxState> only) {
        Map<OutboxState, Long> counts = outbox.counts();
        return Arrays.stream(OutboxState.values())
                .map(one -> new Tab(
                        one.name().toLowerCase(java.util.Locale.ROOT),
                        one.word() + " (" + Words.count(counts.get(one)) + ")",
                        only.filter(one::equals).isPresent()))
                .toList();
    }

    private static String address(Optional<OutboxState> only, int page) {
        String state = only.map(one -> "state=" + one.name().toLowerCase(java.util.Locale.ROOT) + "&")
                .orElse("");
        return "/notices/outbox?" + state + "page=" + page;
    }

    @POST
    @Path("notices/messages/{message}/send-again")
    public Response sendAgain(@RestPath long message) {
        return back(outbox.sendAgain(message));
    }

    @POST
    @Path("notices/messages/{message}/dismiss")
    public Response dismiss(@RestPath long message) {
        return back(outbox.dismiss(message));
    }

    private static Response back(boolean known) {
        if (!known) {
            throw new NotFoundException();
        }
        return Response.seeOther(URI.create("/notices/outbox?state=dead")).build();
    }
}
