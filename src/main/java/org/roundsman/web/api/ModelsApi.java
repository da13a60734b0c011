package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;
import org.roundsman.people.TokenScope;

/** What makers sell. */
@Path("/api/v1/models")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Models")
class ModelsApi {

    private final Models models;

    ModelsApi(Models models) {
        this.models = models;
    }

    /** What a maker sells. */
    @Schema(name = "Model")
    record ModelJson(
            @Schema(examples = "2") long id,
            @Schema(examples = "Tamarack Radio") String maker,
            @Schema(examples = "TR-22") String name,
            @Schema(examples = "access-point") String kind,

            @Schema(
                    nullable = true,
                    description = "The sysObjectID that it answers with",
                    examples = "1.3.6.1.4.1.32473.2.22")
            String objectId,

            @Schema(examples = "2") int radios,

            @Schema(nullable = true, description = "Spatial streams of the strongest radio", examples = "2")
            Integer streams,

            @Schema(description = "Bands in GHz", examples = "2.4,5")
            String bands,

            @Schema(description = "internal, external, or empty where not known", examples = "internal")
            String antenna,

            boolean outdoor,

            @Schema(nullable = true, description = "IEEE 802.3; null for mains or not known", examples = "3")
            Integer poeClass) {

        static ModelJson of(Model model) {
            return new ModelJson(
                    model.id,
                    model.maker,
                    model.name,
                    Choice.word(model.kind),
                    model.objectId,
                    model.radios,
                    model.streams == null ? null : model.streams.intValue(),
                    model.bands,
                    model.antenna,
                    model.outdoor,
                    model.poeClass == null ? null : model.poeClass.intValue());
        }
    }

    @GET
    @Operation(summary = "Lists models")
    public RestResponse<Listing<ModelJson>> listModels(UriInfo address, @BeanParam Paging paging) {
        Stream<ModelJson> all = models.all().stream().map(ModelJson::of);
        return Listing.of(address, paging, paging.cut(all, ModelJson::id), one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{model}")
    @Operation(summary = "Shows a model")
    public ModelJson showModel(@RestPath long model) {
        return models.all().stream()
                .filter(one -> one.id == model)
                .findFirst()
                .map(ModelJson::of)
                .orElseThrow(NotFoundException::new);
    }
}
