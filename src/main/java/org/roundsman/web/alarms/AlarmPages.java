package org.roundsman.web.alarms;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.alarms.AlarmType;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Alarms: their history, one of them, and which kinds there are. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class AlarmPages {

    private final AlarmViews views;
    private final AlarmHistory history;
    private final Visitor visitor;

    AlarmPages(AlarmViews views, AlarmHistory history, Visitor visitor) {
        this.views = views;
        this.history = history;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "alarms")
    static class Templates {
        private Templates() {}

        static native TemplateInstance alarms(AlarmHistory.Found found);

        static native TemplateInstance alarm(AlarmView view, ActForm form, Faults faults);

        static native TemplateInstance types(List<TypeLine> types);
    }

    @GET
    @Path("alarms")
    public TemplateInstance alarms(@BeanParam HistorySearch search) {
        return Templates.alarms(history.find(visitor.scope(), search));
    }

    @GET
    @Path("alarms/{id}")
    public TemplateInstance alarm(@RestPath long id) {
        return Templates.alarm(
                views.view(visitor.scope(), id).orElseThrow(NotFoundException::new), ActForm.EMPTY, Faults.NONE);
    }

    /** The alarm inventory (RFC 8632). */
    @GET
    @Path("alarms/types")
    public TemplateInstance types() {
        return Templates.types(
                List.of(AlarmType.values()).stream().map(TypeLine::of).toList());
    }
}
