package org.roundsman.web.planned;

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
import java.util.Optional;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Planning;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Planning work, changing it, ending it early and calling it off. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class PlannedEdits {

    private final Planning planning;
    private final PlanView view;
    private final Visitor visitor;

    PlannedEdits(Planning planning, PlanView view, Visitor visitor) {
        this.planning = planning;
        this.view = view;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "planned")
    static class Templates {
        private Templates() {}

        static native TemplateInstance form(PlanView.Shown shown);

        static native TemplateInstance preview(PlanView.Preview preview);
    }

    /** With {@code of}, such as {@code site-11}, for that place and what is around it. */
    @GET
    @Path("planned/new")
    public TemplateInstance fresh(@RestQuery String of) {
        if (of != null && PlanForm.where(of).isEmpty()) {
            throw new NotFoundException();
        }
        return Templates.form(view.blank(visitor.scope(), Entered.text(of)));
    }

    @POST
    @Path("planned")
    public Response add(@BeanParam PlanForm form) {
        return saved(form, 0, () -> planning.add(visitor.scope(), view.draft(visitor.scope(), form)));
    }

    /** The next times of what is entered, while it is entered. Nothing is kept. */
    @POST
    @Path("planned/preview")
    public TemplateInstance preview(@BeanParam PlanForm form) {
        return Templates.preview(view.preview(visitor.scope(), form));
    }

    @GET
    @Path("planned/{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        return Templates.form(view.of(visitor.scope(), find(id)));
    }

    @POST
    @Path("planned/{id}")
    public Response change(@RestPath long id, @BeanParam PlanForm form) {
        PlannedWindow window = find(id);
        return saved(form, id, () -> planning.change(visitor.scope(), id, view.draft(window, form)));
    }

    private Response saved(PlanForm form, long id, Supplier<PlannedWindow> save) {
        if (form.previews()) {
            return Response.ok(Templates.form(view.again(visitor.scope(), form, id, Faults.NONE)))
                    .build();
        }
        try {
            return Response.seeOther(URI.create("/planned/" + save.get().id())).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            Faults faults = new Faults(e.faults());
            return Response.status(422)
                    .entity(Templates.form(view.again(visitor.scope(), form, id, faults)))
                    .build();
        }
    }

    @POST
    @Path("planned/{id}/end")
    public Response end(@RestPath long id, @RestForm String back) {
        return done(id, back, () -> planning.end(visitor.scope(), id));
    }

    @POST
    @Path("planned/{id}/cancel")
    public Response cancel(@RestPath long id, @RestForm String back) {
        return done(id, back, () -> planning.cancel(visitor.scope(), id));
    }

    /** What is over already needs no more ending: the page then shows how it is. */
    private static Response done(long id, String back, Supplier<PlannedWindow> work) {
        try {
            work.get();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
        }
        return Response.seeOther(URI.create(address(back).orElse("/planned/" + id)))
                .build();
    }

    /** The page of a site or device that the request came from. */
    private static Optional<String> address(String back) {
        return PlanForm.where(back).flatMap(where -> switch (where.reach()) {
            case CUSTOMER -> Optional.empty();
            case SITE -> Optional.of("/sites/" + where.id());
            case DEVICE -> Optional.of("/devices/" + where.id());
        });
    }

    private PlannedWindow find(long id) {
        return planning.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
