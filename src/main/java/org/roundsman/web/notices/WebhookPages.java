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
import java.time.Instant;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.notices.Webhook;
import org.roundsman.notices.Webhooks;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** A person's webhooks; for the owner, everybody's. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class WebhookPages {

    private final Webhooks webhooks;
    private final Visitor visitor;
    private final Clock clock;

    WebhookPages(Webhooks webhooks, Visitor visitor, Clock clock) {
        this.webhooks = webhooks;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** A webhook as a row shows it. */
    record Line(long id, String person, String name, String url, boolean enabled, String secret) {

        static Line of(Webhook webhook, Instant now) {
            return new Line(
                    webhook.id(),
                    webhook.person(),
                    webhook.name(),
                    webhook.url(),
                    webhook.enabled(),
                    "made " + Words.ago(webhook.secretAt(), now));
        }
    }

    /** What the form for a new one sent. */
    record Form(String name, String url) {}

    @CheckedTemplate(basePath = "notices")
    static class Templates {
        private Templates() {}

        static native TemplateInstance webhooks(List<Line> lines, Form form, Faults faults);

        static native TemplateInstance secret(String name, String secret);
    }

    @GET
    @Path("notices/webhooks")
    public TemplateInstance webhooks() {
        return page(new Form("", ""), Faults.NONE);
    }

    /** Shows the secret once: it is in this answer and nowhere else. */
    @POST
    @Path("notices/webhooks")
    public Response add(@RestForm String name, @RestForm String url) {
        try {
            Webhooks.Made made = webhooks.add(visitor.person(), name, url);
            return Response.ok(Templates.secret(made.webhook().name(), made.secret()))
                    .build();
        } catch (NoticeRejected e) {
            Form form = new Form(name == null ? "" : name, url == null ? "" : url);
            return Response.status(422)
                    .entity(page(form, new Faults(e.faults())))
                    .build();
        }
    }

    @POST
    @Path("notices/webhooks/{webhook}/new-secret")
    public TemplateInstance rotate(@RestPath long webhook) {
        Webhooks.Made made = webhooks.rotate(visitor.person(), webhook).orElseThrow(NotFoundException::new);
        return Templates.secret(made.webhook().name(), made.secret());
    }

    @POST
    @Path("notices/webhooks/{webhook}/enable")
    public Response enable(@RestPath long webhook) {
        return back(webhooks.enable(visitor.person(), webhook, true));
    }

    @POST
    @Path("notices/webhooks/{webhook}/disable")
    public Response disable(@RestPath long webhook) {
        return back(webhooks.enable(visitor.person(), webhook, false));
    }

    @POST
    @Path("notices/webhooks/{webhook}/remove")
    public Response remove(@RestPath long webhook) {
        return back(webhooks.remove(visitor.person(), webhook));
    }

    private static Response back(boolean known) {
        if (!known) {
            throw new NotFoundException();
        }
        return Response.seeOther(URI.create("/notices/webhooks")).build();
    }

    private TemplateInstance page(Form form, Faults faults) {
        List<Line> lines = webhooks.seenBy(visitor.person()).stream()
                .map(webhook -> Line.of(webhook, clock.instant()))
                .toList();
        return Templates.webhooks(lines, form, faults);
    }
}
