package org.roundsman.web.rules;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.DryRuns;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleOverride;
import org.roundsman.web.page.Visitor;

/** Trying other values of a rule over what is stored, before they are saved. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class TryPages {

    private final DryRuns runs;
    private final RuleBook book;
    private final RuleViews views;
    private final Visitor visitor;

    TryPages(DryRuns runs, RuleBook book, RuleViews views, Visitor visitor) {
        this.runs = runs;
        this.book = book;
        this.views = views;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "rules")
    static class Templates {
        private Templates() {}

        static native TemplateInstance tried(TryViews.View view);

        static native TemplateInstance live(TryViews.View view);
    }

    @POST
    @Path("rules/{type}/try")
    public Response tryIt(@RestPath String type, @BeanParam ValuesForm form) {
        try {
            DryRun run = runs.start(
                    visitor.scope(),
                    form.wish(RulePages.type(type)),
                    form.start(),
                    form.end(views.now()),
                    visitor.person().name());
            return Response.seeOther(URI.create("/rules/tries/" + run.id())).build();
        } catch (InputRejected e) {
            return RulePages.refused(views, RulePages.type(type), form, e);
        }
    }

    @GET
    @Path("rules/tries/{id}")
    public TemplateInstance tried(@RestPath long id) {
        return Templates.tried(view(id));
    }

    /** The part that refreshes itself while the try runs. */
    @GET
    @Path("rules/tries/{id}/live")
    public TemplateInstance live(@RestPath long id) {
        return Templates.live(view(id));
    }

    @POST
    @Path("rules/tries/{id}/cancel")
    public Response cancel(@RestPath long id) {
        if (!runs.cancel(visitor.scope(), id)) {
            throw new NotFoundException();
        }
        return Response.seeOther(URI.create("/rules/tries/" + id)).build();
    }

    private TryViews.View view(long id) {
        DryRun run = runs.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        int version = book.overrides(visitor.scope(), run.wish().type()).stream()
                .filter(one -> one.level() == run.wish().level()
                        && one.targetId() == run.wish().targetId())
                .map(RuleOverride::version)
                .findFirst()
                .orElse(0);
        return TryViews.of(run, views.writes(), version);
    }
}
