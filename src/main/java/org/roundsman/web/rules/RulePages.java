package org.roundsman.web.rules;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.alarms.AlarmType;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The rules, and values that people lay over the shipped ones. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class RulePages {

    private final RuleBook book;
    private final RuleViews views;
    private final Visitor visitor;

    RulePages(RuleBook book, RuleViews views, Visitor visitor) {
        this.book = book;
        this.views = views;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "rules")
    static class Templates {
        private Templates() {}

        static native TemplateInstance rules(List<RuleViews.Line> lines);

        static native TemplateInstance rule(RuleViews.Whole view, String wrong);

        static native TemplateInstance places(AlarmType type, String words, List<RuleViews.Choice> choices);

        static native TemplateInstance values(RuleViews.Form form);
    }

    @GET
    @Path("rules")
    public TemplateInstance rules() {
        return Templates.rules(views.lines());
    }

    @GET
    @Path("rules/{type}")
    public TemplateInstance rule(@RestPath String type) {
        return Templates.rule(views.whole(type(type)), "");
    }

    /** For whom values are to be set. */
    @GET
    @Path("rules/{type}/places")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public TemplateInstance places(@RestPath String type, @RestQuery @DefaultValue("") String words) {
        return Templates.places(type(type), words, views.choices(type(type), words));
    }

    @GET
    @Path("rules/{type}/values")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public TemplateInstance values(
            @RestPath String type,
            @RestQuery @DefaultValue("all") String level,
            @RestQuery @DefaultValue("0") long target) {
        RuleLevel of = RuleLevel.of(level).orElseThrow(NotFoundException::new);
        return Templates.values(views.form(type(type), of, target).orElseThrow(NotFoundException::new));
    }

    @POST
    @Path("rules/{type}/values")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response save(@RestPath String type, @BeanParam ValuesForm form) {
        try {
            book.save(visitor.scope(), form.wish(type(type)), form.version());
            return back(type(type));
        } catch (InputRejected e) {
            return refused(views, type(type), form, e);
        }
    }

    @POST
    @Path("rules/values/{id}/remove")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response remove(@RestPath long id, @RestForm @DefaultValue("0") int basedOn) {
        RuleOverride one = book.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        try {
            book.remove(visitor.scope(), id, basedOn);
            return back(one.type());
        } catch (InputRejected e) {
            String wrong = String.join(" ", e.faults().values());
            return Response.status(422)
                    .entity(Templates.rule(views.whole(one.type()), wrong))
                    .build();
        }
    }

    /** The form once more, with what is wrong; what belongs to no field stands above it. */
    static Response refused(RuleViews views, AlarmType type, ValuesForm form, InputRejected e) {
        return Response.status(422)
                .entity(Templates.values(
                        views.refused(type, form, new Faults(e.faults())).orElseThrow(NotFoundException::new)))
                .build();
    }

    static AlarmType type(String id) {
        return AlarmType.byId(id).orElseThrow(NotFoundException::new);
    }

    private static Response back(AlarmType type) {
        return Response.seeOther(URI.create("/rules/" + type.id())).build();
    }
}
