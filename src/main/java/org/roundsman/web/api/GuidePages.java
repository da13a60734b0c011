package org.roundsman.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.smallrye.openapi.runtime.OpenApiConstants;
import io.quarkus.smallrye.openapi.runtime.OpenApiDocumentService;
import io.smallrye.openapi.runtime.io.Format;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.people.TokenScope;

/** What explains the API to people. It shows no data, so nobody need sign in. */
@Path("/api")
@Produces(MediaType.TEXT_HTML)
@PermitAll
class GuidePages {

    private final OpenApiDocumentService documents;
    private final ObjectMapper json;

    GuidePages(OpenApiDocumentService documents, ObjectMapper json) {
        this.documents = documents;
        this.json = json;
    }

    /** The operations on one kind of thing. */
    record Group(String name, List<DescribedOperation> operations) {}

    @CheckedTemplate(basePath = "api")
    static class Templates {
        private Templates() {}

        static native TemplateInstance guide(List<Group> groups, List<TokenScope> scopes);

        static native TemplateInstance problems(List<ProblemKind> kinds);
    }

    @GET
    @Path("docs")
    @Operation(hidden = true)
    public TemplateInstance guide() {
        return Templates.guide(groups(), List.of(TokenScope.values()));
    }

    @GET
    @Path("problems")
    @Operation(hidden = true)
    public TemplateInstance problems() {
        return Templates.problems(List.of(ProblemKind.values()));
    }

    @GET
    @Path("problems/{problem}")
    @Operation(hidden = true)
    public TemplateInstance problem(@RestPath String problem) {
        return Templates.problems(List.of(ProblemKind.of(problem).orElseThrow(NotFoundException::new)));
    }

    private List<Group> groups() {
        Map<String, List<DescribedOperation>> groups = new TreeMap<>();
        for (Map.Entry<String, JsonNode> path : described().path("paths").properties()) {
            for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
                String tag = operation.getValue().path("tags").path(0).asText();
                groups.computeIfAbsent(tag, t -> new ArrayList<>())
                        .add(new DescribedOperation(
                                operation.getKey().toUpperCase(Locale.ROOT),
                                path.getKey(),
                                operation.getValue().path("summary").asText()));
            }
        }
        return groups.entrySet().stream()
                .map(group -> new Group(group.getKey(), group.getValue()))
                .toList();
    }

    private JsonNode described() {
        try {
            return json.readTree(documents.getDocument(OpenApiConstants.DEFAULT_DOCUMENT_NAME, Format.JSON));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
