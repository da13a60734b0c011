package org.roundsman.web.alarms;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.alarms.AlarmQuality;
import org.roundsman.people.Accounts;
import org.roundsman.people.Role;

/** How good the alarms are: few enough to be acted on, none of them noise. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class QualityPages {

    private static final int MOST_TECHNICIANS = 999;

    private final AlarmQuality quality;
    private final Accounts accounts;
    private final Clock clock;

    QualityPages(AlarmQuality quality, Accounts accounts, Clock clock) {
        this.quality = quality;
        this.accounts = accounts;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "alarms")
    static class Templates {
        private Templates() {}

        static native TemplateInstance quality(QualityView view);
    }

    /** @param technicians how many people share the alarms; without it, as many as have the role */
    @GET
    @Path("alarms/quality")
    public TemplateInstance quality(
            @RestQuery @DefaultValue("7") String days, @RestQuery @DefaultValue("") String technicians) {
        int length = QualityView.days(days);
        int people = onDuty();
        int shared = technicians.matches("[0-9]{1,3}")
                ? Math.max(1, Math.min(MOST_TECHNICIANS, Integer.parseInt(technicians)))
                : people;
        Instant now = clock.instant();
        return Templates.quality(
                new QualityView(quality.report(now.minus(Duration.ofDays(length)), now, shared), length, people));
    }

    private int onDuty() {
        long technicians = accounts.all().stream()
                .filter(person -> person.role() == Role.TECHNICIAN && !person.disabled())
                .count();
        return (int) Math.max(1, technicians);
    }
}
