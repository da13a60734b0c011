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
import java.util.List;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.warranty.Purchase;
import org.roundsman.warranty.Purchases;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Entering and changing what was bought: of a device, or of a unit that stands at none. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class PurchaseEdits {

    private final Purchases purchases;
    private final Warranties warranties;
    private final Choices choices;
    private final Visitor visitor;

    PurchaseEdits(Purchases purchases, Warranties warranties, Choices choices, Visitor visitor) {
        this.purchases = purchases;
        this.warranties = warranties;
        this.choices = choices;
        this.visitor = visitor;
    }

    /**
     * The form.
     *
     * @param place what it stands at, where a device says so; else empty, and a site is chosen
     * @param back address of the page that it was opened from
     */
    record Shown(
            String heading,
            String action,
            String back,
            String place,
            PurchaseForm form,
            List<Choices.Choice> customers,
            List<Choices.Choice> sites,
            List<Choices.Choice> models,
            Faults faults) {}

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance purchase(Shown shown);
    }

    @GET
    @Path("warranty/units/devices/{device}/purchase")
    public TemplateInstance ofDevice(@RestPath long device) {
        Unit unit = unit(device);
        return Templates.purchase(shown(unit, form(unit), Faults.NONE));
    }

    @POST
    @Path("warranty/units/devices/{device}/purchase")
    public Response saveOfDevice(@RestPath long device, @BeanParam PurchaseForm sent) {
        Unit unit = unit(device);
        PurchaseForm form = sent.at(String.valueOf(unit.siteId().orElseThrow()), String.valueOf(device));
        return saved(
                () -> unit.purchase()
                        .map(one -> purchases.change(scope(), one.id(), form.modelId(), form.draft()))
                        .orElseGet(() -> purchases.add(scope(), unit.customerId(), form.modelId(), form.draft())),
                "/warranty/units/devices/" + device,
                faults -> shown(unit, form, faults));
    }

    @GET
    @Path("warranty/purchases/new")
    public TemplateInstance fresh(@BeanParam UnitSearch asked) {
        return Templates.purchase(fresh(PurchaseForm.blank(asked.customer(), "", "", ""), Faults.NONE));
    }

    @POST
    @Path("warranty/purchases")
    public Response add(@BeanParam PurchaseForm sent) {
        PurchaseForm form = sent.at(sent.site(), "");
        return saved(
                () -> purchases.add(scope(), Asked.number(form.customer()).orElse(0), form.modelId(), form.draft()),
                "",
                faults -> fresh(form, faults));
    }

    @GET
    @Path("warranty/units/purchases/{purchase}/edit")
    public TemplateInstance edit(@RestPath long purchase) {
        Purchase one = find(purchase);
        return Templates.purchase(shown(one, PurchaseForm.of(one), Faults.NONE));
    }

    @POST
    @Path("warranty/units/purchases/{purchase}")
    public Response change(@RestPath long purchase, @BeanParam PurchaseForm form) {
        Purchase one = find(purchase);
        return saved(
                () -> purchases.change(scope(), purchase, form.modelId(), form.draft()),
                "",
                faults -> shown(one, form, faults));
    }

    /** What the form shows again when something cannot be taken. */
    private interface Again {
        Shown with(Faults faults);
    }

    private Response saved(Supplier<Purchase> save, String to, Again again) {
        try {
            Purchase made = save.get();
            return Response.seeOther(URI.create(to.isEmpty() ? "/warranty/units/purchases/" + made.id() : to))
                    .build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.purchase(again.with(new Faults(e.faults()))))
                    .build();
        }
    }

    private static PurchaseForm form(Unit unit) {
        return unit.purchase()
                .map(PurchaseForm::of)
                .orElseGet(() -> PurchaseForm.blank(String.valueOf(unit.customerId()), unit.serial(), "", ""));
    }

    private Shown shown(Unit unit, PurchaseForm form, Faults faults) {
        String page = "/warranty/units/devices/" + unit.deviceId().orElseThrow();
        String place = unit.name() + ", " + unit.site() + ", " + unit.customer();
        return new Shown(
                "Purchase of " + unit.name(),
                page + "/purchase",
                page,
                place,
                form,
                List.of(),
                List.of(),
                List.of(),
                faults);
    }

    private Shown shown(Purchase one, PurchaseForm form, Faults faults) {
        String page = "/warranty/units/purchases/" + one.id();
        return new Shown(
                "Purchase of " + one.serial(),
                page,
                page,
                "",
                form,
                List.of(),
                choices.sites(one.customerId(), form.site()),
                choices.models(form.model()),
                faults);
    }

    private Shown fresh(PurchaseForm form, Faults faults) {
        long customer = Asked.number(form.customer()).orElse(0);
        return new Shown(
                "Enter a purchase",
                "/warranty/purchases",
                "/warranty/units",
                "",
                form,
                choices.customers(form.customer()),
                customer == 0 ? List.of() : choices.sites(customer, form.site()),
                choices.models(form.model()),
                faults);
    }

    private Unit unit(long device) {
        return warranties
                .ofDevice(scope(), device)
                .orElseThrow(NotFoundException::new)
                .unit();
    }

    private Purchase find(long id) {
        return purchases.find(scope(), id).orElseThrow(NotFoundException::new);
    }

    private CustomerScope scope() {
        return visitor.scope();
    }
}
