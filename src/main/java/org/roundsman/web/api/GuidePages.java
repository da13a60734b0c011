package org.roundsman.web.api;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.people.TokenScope;

/** What explains the API to people. It shows no data, so nobody need sign in. */
@Path("/api")
@Produces(MediaType.TEXT_HTML)
@PermitAll
class GuidePages {

    private final DescribedApi described;

    GuidePages(DescribedApi described) {
        this.described = described;
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
        Map<String, List<DescribedOperation>> groups = described.operations().stream()
                .collect(Collectors.groupingBy(DescribedOperation::tag, TreeMap::new, Collectors.toList()));
        return groups.entrySet().stream()
                .map(group -> new Group(group.getKey(), group.getValue()))
                .toList();
    }
}
