package org.roundsman.web.people;

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
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Accounts;
import org.roundsman.people.NewPerson;
import org.roundsman.people.PeopleException;
import org.roundsman.people.Person;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;

/** Who may sign in: for the owner. */
@Path("/people")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Role.OWNER_ROLE)
class PeoplePages {

    private final Accounts accounts;
    private final Customers customers;

    PeoplePages(Accounts accounts, Customers customers) {
        this.accounts = accounts;
        this.customers = customers;
    }

    @CheckedTemplate(basePath = "people")
    static class Templates {
        private Templates() {}

        static native TemplateInstance people(
                List<PersonLine> people, PersonForm form, List<Customer> customers, List<Role> roles, Faults faults);

        static native TemplateInstance password(String name, String password);
    }

    @GET
    public TemplateInstance all() {
        return page(PersonForm.blank(), Faults.NONE);
    }

    @POST
    public Response add(@BeanParam PersonForm form) {
        try {
            NewPerson person = form.person();
            return Response.ok(Templates.password(person.name(), accounts.add(person)))
                    .build();
        } catch (PeopleException e) {
            return refused(form, e);
        }
    }

    @POST
    @Path("{id}/disable")
    public Response disable(@RestPath long id) {
        try {
            accounts.disable(known(id));
            return back();
        } catch (PeopleException e) {
            return refused(PersonForm.blank(), e);
        }
    }

    @POST
    @Path("{id}/enable")
    public Response enable(@RestPath long id) {
        accounts.enable(known(id));
        return back();
    }

    @POST
    @Path("{id}/unlock")
    public Response unlock(@RestPath long id) {
        accounts.unlock(known(id));
        return back();
    }

    /** Shows the new password once: it is in this answer and nowhere else. */
    @POST
    @Path("{id}/reset")
    public TemplateInstance reset(@RestPath long id) {
        Person person = accounts.byId(id).orElseThrow(NotFoundException::new);
        return Templates.password(person.name(), accounts.resetPassword(id));
    }

    private long known(long id) {
        return accounts.byId(id).orElseThrow(NotFoundException::new).id();
    }

    private static Response back() {
        return Response.seeOther(URI.create("/people")).build();
    }

    private Response refused(PersonForm form, PeopleException e) {
        return Response.status(422)
                .entity(page(form, Faults.of(e.field(), e.getMessage())))
                .build();
    }

    private TemplateInstance page(PersonForm form, Faults faults) {
        List<Customer> all = customers.all(CustomerScope.everyone());
        List<PersonLine> lines = accounts.all().stream()
                .map(person -> PersonLine.of(person, all))
                .toList();
        return Templates.people(lines, form, all, List.of(Role.values()), faults);
    }
}
