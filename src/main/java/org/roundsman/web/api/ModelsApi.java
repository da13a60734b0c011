package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.FleetHold;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What makers sell. Prices and notes are for the firm's own people. */
@Path("/api/v1/models")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Models")
class ModelsApi {

    private final Catalogue catalogue;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    ModelsApi(Catalogue catalogue, FleetHold hold, Caller caller, Tagged tagged) {
        this.catalogue = catalogue;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Operation(summary = "Lists models")
    public RestResponse<Listing<ModelJson>> listModels(
            UriInfo address,
            @BeanParam Paging paging,
            @RestQuery @Parameter(description = "access-point, network-switch or gateway") String kind,
            @RestQuery String search) {
        Optional<DeviceKind> only = Choice.filter(DeviceKind.class, "kind", kind);
        boolean prices = prices();
        Stream<ModelJson> all = catalogue.entries().stream()
                .filter(entry -> only.isEmpty() || entry.model().kind == only.get())
                .filter(entry -> Given.fits(search, entry.model().maker, entry.model().name))
                .map(entry -> ModelJson.of(entry, prices));
        return Listing.of(address, paging, paging.cut(all, ModelJson::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Adds a model")
    public RestResponse<ModelJson> addModel(ModelEntryJson entry) {
        caller.requireEveryone();
        Model made = catalogue.add(entry.draft());
        return tagged.created(
                "/api/v1/models/" + made.id, ModelJson.of(find(made.id), true), ModelEntryJson.of(ModelDraft.of(made)));
    }

    @GET
    @Path("{model}")
    @Operation(summary = "Shows a model")
    public RestResponse<ModelJson> showModel(@RestPath long model) {
        return answer(model);
    }

    @PATCH
    @Path("{model}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes a model")
    public RestResponse<ModelJson> changeModel(
            @RestPath long model,
            @RequestBody(content = @Content(schema = @Schema(implementation = ModelEntryJson.class)))
                    MergePatch changes) {
        caller.requireEveryone();
        hold.during(FleetHold.Thing.MODEL, model, () -> {
            ModelEntryJson now = ModelEntryJson.of(ModelDraft.of(find(model).model()));
            tagged.requireUnchanged(now);
            catalogue.change(model, changes.onto(now).draft());
        });
        return answer(model);
    }

    @DELETE
    @Path("{model}")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Removes a model that no device is of")
    public void removeModel(@RestPath long model) {
        caller.requireEveryone();
        hold.during(FleetHold.Thing.MODEL, model, () -> {
            tagged.requireUnchanged(ModelEntryJson.of(ModelDraft.of(find(model).model())));
            catalogue.remove(model);
        });
    }

    private RestResponse<ModelJson> answer(long id) {
        Catalogue.Entry entry = find(id);
        ModelDraft draft = ModelDraft.of(entry.model());
        return tagged.ok(ModelJson.of(entry, prices()), ModelEntryJson.of(prices() ? draft : withoutPrice(draft)));
    }

    /** A viewer's tag does not change with what a viewer does not see. */
    private static ModelDraft withoutPrice(ModelDraft draft) {
        return new ModelDraft(
                draft.maker(),
                draft.name(),
                draft.kind(),
                draft.objectId(),
                draft.build(),
                ListPrice.NONE,
                draft.firmwareLineId(),
                draft.terms(),
                draft.ends(),
                "");
    }

    private boolean prices() {
        return caller.person().role().seesPrices();
    }

    private Catalogue.Entry find(long id) {
        return catalogue.entries().stream()
                .filter(entry -> entry.model().id == id)
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }
}
