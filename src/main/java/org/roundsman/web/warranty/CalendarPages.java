package org.roundsman.web.warranty;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.warranty.CalendarAddress;
import org.roundsman.warranty.CalendarAddresses;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** A person's private calendar addresses; for the owner, everybody's. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CalendarPages {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private final CalendarAddresses addresses;
    private final Choices choices;
    private final Visitor visitor;

    CalendarPages(CalendarAddresses addresses, Choices choices, Visitor visitor) {
        this.addresses = addresses;
        this.choices = choices;
        this.visitor = visitor;
    }

    /** An address in a list, in words. */
    record Line(long id, String person, String name, String customer, String used, String state, boolean good) {

        static Line of(CalendarAddress one) {
            return new Line(
                    one.id(),
                    one.person(),
                    one.name(),
                    one.customer().isEmpty() ? "every customer" : one.customer(),
                    one.usedAt().map(CalendarPages::minute).orElse("never"),
                    one.revokedAt().map(at -> "ended " + minute(at)).orElse("since " + minute(one.createdAt())),
                    one.good());
        }
    }

    /** What the page shows. */
    record View(
            List<Line> own,
            List<Line> others,
            String name,
            List<Choices.Choice> customers,
            boolean everybody,
            Faults faults) {}

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance calendars(View view);

        static native TemplateInstance calendarMade(String name, String address);
    }

    @GET
    @Path("warranty/calendars")
    public TemplateInstance all() {
        return Templates.calendars(view("", "", Faults.NONE));
    }

    /** Shows the new address once: it is in this answer and nowhere else. */
    @POST
    @Path("warranty/calendars")
    public Response add(@RestForm String name, @RestForm String customer, @Context UriInfo here) {
        try {
            String secret = addresses.add(
                    visitor.scope(), visitor.person().accountId(), Asked.text(name), Asked.number(customer));
            String address =
                    here.getBaseUri().resolve("/calendar/" + secret + ".ics").toString();
            return Response.ok(Templates.calendarMade(Asked.text(name), address))
                    .build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.calendars(view(Asked.text(name), Asked.text(customer), new Faults(e.faults()))))
                    .build();
        }
    }

    @POST
    @Path("warranty/calendars/{calendar}/revoke")
    public Response revoke(@RestPath long calendar) {
        SignedIn person = visitor.person();
        if (!addresses.revoke(person.accountId(), person.role() == Role.OWNER, calendar)) {
            throw new NotFoundException();
        }
        return Response.seeOther(URI.create("/warranty/calendars")).build();
    }

    private View view(String name, String customer, Faults faults) {
        SignedIn person = visitor.person();
        List<Line> others = person.role() == Role.OWNER
                ? addresses.goodOfOthers(person.accountId()).stream()
                        .map(Line::of)
                        .toList()
                : List.of();
        return new View(
                addresses.of(person.accountId()).stream().map(Line::of).toList(),
                others,
                name,
                choices.customers(customer),
                person.customerId().isEmpty(),
                faults);
    }

    private static String minute(Instant at) {
        return MINUTE.format(at);
    }
}
