package org.roundsman.web.warranty;

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
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.CoverSearch;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Entering contracts, changing and removing them, and saying which units they cover. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ContractEdits {

    private final Contracts contracts;
    private final ContractViews views;
    private final Choices choices;
    private final Visitor visitor;

    ContractEdits(Contracts contracts, ContractViews views, Choices choices, Visitor visitor) {
        this.contracts = contracts;
        this.views = views;
        this.choices = choices;
        this.visitor = visitor;
    }

    /** The form; the customer is chosen for a new one only. */
    record Shown(
            String heading,
            String action,
            String back,
            ContractForm form,
            List<Choices.Choice> customers,
            Faults faults) {}

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance contractForm(Shown shown);
    }

    @GET
    @Path("warranty/contracts/new")
    public TemplateInstance fresh(@BeanParam UnitSearch asked) {
        return Templates.contractForm(fresh(ContractForm.blank(asked.customer()), Faults.NONE));
    }

    @POST
    @Path("warranty/contracts")
    public Response add(@BeanParam ContractForm form) {
        try {
            Contract made = contracts.add(scope(), Asked.number(form.customer()).orElse(0), form.draft());
            return to(made.id());
        } catch (InputRejected e) {
            return refused(fresh(form, new Faults(e.faults())));
        }
    }

    @GET
    @Path("warranty/contracts/{contract}/edit")
    public TemplateInstance edit(@RestPath long contract) {
        return Templates.contractForm(shown(contract, ContractForm.of(find(contract)), Faults.NONE));
    }

    @POST
    @Path("warranty/contracts/{contract}")
    public Response change(@RestPath long contract, @BeanParam ContractForm form) {
        find(contract);
        try {
            contracts.change(scope(), contract, form.draft());
            return to(contract);
        } catch (InputRejected e) {
            return refused(shown(contract, form, new Faults(e.faults())));
        }
    }

    @POST
    @Path("warranty/contracts/{contract}/remove")
    public Response remove(@RestPath long contract) {
        find(contract);
        contracts.remove(scope(), contract);
        return Response.seeOther(URI.create("/warranty/contracts")).build();
    }

    /** Covers the serial numbers that were pasted. */
    @POST
    @Path("warranty/contracts/{contract}/serials")
    public Response cover(@RestPath long contract, @RestForm String serials) {
        find(contract);
        return told(contract, contracts.cover(scope(), contract, ContractForm.serials(serials)));
    }

    /** Covers the units of a site, of a model, or of a model at a site. */
    @POST
    @Path("warranty/contracts/{contract}/units")
    public Response coverAll(@RestPath long contract, @RestForm String site, @RestForm String model) {
        find(contract);
        OptionalLong at = Asked.number(site);
        OptionalLong of = Asked.number(model);
        if (at.isEmpty() && of.isEmpty()) {
            return page(
                    contract,
                    new ContractViews.Told("Nothing was added: choose a site or a model.", List.of(), List.of()));
        }
        CoverSearch search = new CoverSearch(
                OptionalLong.empty(), at, of, Optional.empty(), EnumSet.noneOf(CoverStatus.class), false, "");
        return told(contract, contracts.cover(scope(), contract, search));
    }

    @POST
    @Path("warranty/contracts/{contract}/uncover")
    public Response uncover(@RestPath long contract, @RestForm String serial) {
        find(contract);
        contracts.uncover(scope(), contract, ContractForm.serials(serial));
        return to(contract);
    }

    private Response told(long contract, Contracts.Covered covered) {
        return page(contract, ContractViews.Told.of(covered));
    }

    private Response page(long contract, ContractViews.Told told) {
        return Response.ok(ContractPages.Templates.contract(views.of(find(contract), 1, told)))
                .build();
    }

    private static Response to(long contract) {
        return Response.seeOther(URI.create("/warranty/contracts/" + contract)).build();
    }

    private static Response refused(Shown shown) {
        return Response.status(422).entity(Templates.contractForm(shown)).build();
    }

    private Shown fresh(ContractForm form, Faults faults) {
        return new Shown(
                "Enter a contract",
                "/warranty/contracts",
                "/warranty/contracts",
                form,
                choices.customers(form.customer()),
                faults);
    }

    private Shown shown(long contract, ContractForm form, Faults faults) {
        String page = "/warranty/contracts/" + contract;
        return new Shown("Change contract " + form.number(), page, page, form, List.of(), faults);
    }

    private Contract find(long id) {
        return contracts.find(scope(), id).orElseThrow(NotFoundException::new);
    }

    private CustomerScope scope() {
        return visitor.scope();
    }
}
