package org.roundsman.web.triage;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** What needs somebody now, the most urgent first, with one alarm beside the list. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class TriagePages {

    private final TriageLists lists;
    private final AlarmPanels panels;
    private final Visitor visitor;

    TriagePages(TriageLists lists, AlarmPanels panels, Visitor visitor) {
        this.lists = lists;
        this.panels = panels;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "triage")
    static class Templates {
        private Templates() {}

        static native TemplateInstance triage(Desk desk);

        static native TemplateInstance list(TriageList list);

        static native TemplateInstance panel(AlarmPanel panel, ActForm form, Faults faults);

        static native TemplateInstance now(AlarmPanel panel);
    }

    /** The list, with the most urgent alarm beside it. */
    @GET
    @Path("triage")
    public TemplateInstance triage() {
        Reader reader = Reader.of(visitor.person());
        List<OpenAlarm> needy = lists.needy(reader.scope());
        long first = needy.isEmpty() ? 0 : needy.get(0).id();
        AlarmPanel panel = first == 0 ? null : panels.panel(reader, first).orElse(null);
        return Templates.triage(new Desk(lists.list(reader, first), panel, false, ActForm.EMPTY, Faults.NONE));
    }

    /**
     * The part that refreshes itself.
     *
     * @param seen the stamp of what is shown; without news of it the answer is empty (204)
     */
    @GET
    @Path("triage/list")
    public Response list(@RestQuery @DefaultValue("0") String chosen, @RestQuery @DefaultValue("") String seen) {
        TriageList list =
                lists.list(Reader.of(visitor.person()), chosen.matches("[0-9]{1,18}") ? Long.parseLong(chosen) : 0);
        return list.stamp().equals(seen)
                ? Response.noContent().build()
                : Response.ok(Templates.list(list)).build();
    }

    /** One alarm beside the list, or for the script the alarm alone. */
    @GET
    @Path("triage/alarms/{id}")
    public TemplateInstance alarm(@RestPath long id, @HeaderParam("HX-Request") String part) {
        Reader reader = Reader.of(visitor.person());
        AlarmPanel panel = panels.panel(reader, id).orElseThrow(NotFoundException::new);
        return part == null
                ? Templates.triage(new Desk(lists.list(reader, id), panel, true, ActForm.EMPTY, Faults.NONE))
                : Templates.panel(panel, ActForm.EMPTY, Faults.NONE);
    }

    /** The part of an alarm that refreshes itself, in the same way as the list. */
    @GET
    @Path("triage/alarms/{id}/now")
    public Response now(@RestPath long id, @RestQuery @DefaultValue("") String seen) {
        AlarmPanel panel = panels.panel(Reader.of(visitor.person()), id).orElseThrow(NotFoundException::new);
        return panel.stamp().equals(seen)
                ? Response.noContent().build()
                : Response.ok(Templates.now(panel)).build();
    }
}
