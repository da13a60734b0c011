package org.roundsman.web.notices;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.ZoneId;
import java.util.List;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.notices.Digest;
import org.roundsman.notices.NoticeChoices;
import org.roundsman.notices.NoticeEvent;
import org.roundsman.notices.NoticePeople;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.notices.Outbox;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** What a person wants to be told, and how. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ChoicePages {

    private static final List<String> ZONES = ZoneId.getAvailableZoneIds().stream()
            .filter(zone -> zone.contains("/") && !zone.startsWith("Etc/") && !zone.startsWith("SystemV/"))
            .sorted()
            .toList();

    private final NoticePeople people;
    private final Outbox outbox;
    private final Customers customers;
    private final MailWords mail;
    private final Visitor visitor;

    ChoicePages(NoticePeople people, Outbox outbox, Customers customers, MailWords mail, Visitor visitor) {
        this.people = people;
        this.outbox = outbox;
        this.customers = customers;
        this.mail = mail;
        this.visitor = visitor;
    }

    /** What the page offers besides the form. */
    record Offers(
            List<Severity> severities,
            List<NoticeEvent> events,
            List<Customer> customers,
            List<String> zones,
            List<Digest> digests,
            List<Integer> hours,
            List<Weekday> weekdays,
            String mailTrouble,
            String said,
            SignedIn person) {

        public boolean keeper() {
            return person.role() == Role.OWNER || person.role() == Role.TECHNICIAN;
        }

        public boolean owner() {
            return person.role() == Role.OWNER;
        }
    }

    @CheckedTemplate(basePath = "notices")
    static class Templates {
        private Templates() {}

        static native TemplateInstance notices(Offers offers, ChoiceForm form, Faults faults);
    }

    @GET
    @Path("notices")
    public TemplateInstance notices() {
        return page(ChoiceForm.of(people.of(visitor.person())), Faults.NONE, "");
    }

    @POST
    @Path("notices")
    public Response choose(@BeanParam ChoiceForm form) {
        try {
            NoticeChoices wanted = form.choices();
            people.choose(visitor.person(), wanted);
            return Response.seeOther(URI.create("/notices")).build();
        } catch (NoticeRejected e) {
            return Response.status(422)
                    .entity(page(form, new Faults(e.faults()), ""))
                    .build();
        }
    }

    @POST
    @Path("notices/test")
    public TemplateInstance test() {
        SignedIn person = visitor.person();
        int ways = outbox.test(person);
        String said = ways == 0
                ? "No way to you is open: switch mails on, or add a webhook, and save."
                : "A test message is on its way, by " + (ways == 1 ? "one way" : ways + " ways")
                        + " that you have open.";
        return page(ChoiceForm.of(people.of(person)), Faults.NONE, said);
    }

    private TemplateInstance page(ChoiceForm form, Faults faults, String said) {
        Offers offers = new Offers(
                List.of(Severity.values()),
                List.of(NoticeEvent.values()),
                customers.all(visitor.scope()),
                ZONES,
                List.of(Digest.values()),
                java.util.stream.IntStream.range(0, 24).boxed().toList(),
                Weekday.ALL,
                mail.trouble(),
                said,
                visitor.person());
        return Templates.notices(offers, form, faults);
    }
}
