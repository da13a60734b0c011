package org.roundsman.web.api;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;
import org.eclipse.microprofile.openapi.models.servers.Server;

/** Adds to the description of the API what holds for every operation: how to sign in, and what can go wrong. */
public final class ApiDescription implements OASFilter {

    private static final String SCHEME = "token";
    private static final String RESPONSES = "#/components/responses/";

    private static final Map<String, String> TAGS = Map.ofEntries(
            Map.entry("Customers", "Who pays"),
            Map.entry("Sites", "The addresses of customers, with their networks"),
            Map.entry("Devices", "Access points, switches and gateways: how they are, and what is entered about them"),
            Map.entry("Wiring", "What hangs on which port, how that is known, and what people say about it"),
            Map.entry("Planned work", "When sites and devices are worked on; that time counts for nobody"),
            Map.entry("Models", "What makers sell, at which price and terms and until when; and lines of firmware"),
            Map.entry("Firmware", "What devices run, and what is decided about it"),
            Map.entry("Rules", "When alarms are raised and clear: shipped values, and those set for somebody"),
            Map.entry("Profiles", "How devices of a maker are read: texts, their versions, and which are in use"),
            Map.entry("Credentials", "How SNMP agents let us in"),
            Map.entry("Notifications", "How traps and informs come in, and whose are not let in"),
            Map.entry("Alarms", "What is wrong, what was, why, and what people do about it"),
            Map.entry("Notices", "What people are told, and the messages that were sent to them"),
            Map.entry("Changes", "Who changed what"),
            Map.entry("Claims and spares", "Claims under warranty, which unit stood where, and what lies in store"),
            Map.entry("Tokens", "The caller, and the caller's own tokens"),
            Map.entry("Import and export", "Tables as CSV: out, and in by way of a dry run"),
            Map.entry(
                    "Reports",
                    "What customers are told about a month: building it, reading it over, sending it, its archive"),
            Map.entry("Warranty", "Until when units are covered and why, what that costs, and extended contracts"),
            Map.entry("Sweeps", "Looking for the devices of a site, and taking them up"));

    /** Operations that other work under way, or the lack of it, may stand against; besides everything that removes. */
    private static final Set<String> STOPPABLE = Set.of(
            "addImport",
            "checkImport",
            "applyImport",
            "addSweep",
            "adoptFindings",
            "endPlannedWork",
            "cancelPlannedWork",
            "addReport",
            "buildReports",
            "remarkReport",
            "lookReport",
            "approveReport",
            "reopenReport",
            "sendReport",
            "sendReportAgain",
            "addReportLink",
            "returnReportMail");

    private static final Set<PathItem.HttpMethod> TAGGED =
            Set.of(PathItem.HttpMethod.PUT, PathItem.HttpMethod.PATCH, PathItem.HttpMethod.DELETE);

    @Override
    public void filterOpenAPI(OpenAPI api) {
        api.getInfo()
                .description("Resources of Roundsman for programs. Every request carries a personal token, made on the"
                        + " page “Tokens”. Times are RFC 3339 in UTC. Lists come in pieces: follow “next”, or"
                        + " the header Link (RFC 8288). Changes are JSON Merge Patch (RFC 7396); If-Match"
                        + " with the ETag of an earlier answer makes sure that nobody changed the thing"
                        + " meanwhile. What goes wrong is told as RFC 9457 says. All examples are invented.")
                .license(OASFactory.createLicense().name("Apache-2.0").identifier("Apache-2.0"));
        Server here = OASFactory.createServer().url("/").description("The service that this description came from");
        api.setServers(List.of(here));
        api.getComponents()
                .addSecurityScheme(
                        SCHEME,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("A personal token: Authorization: Bearer roundsman_…"));
        api.getComponents().addSchema("FieldError", fieldError()).addSchema("Problem", problem());
        for (ProblemKind kind : ProblemKind.values()) {
            api.getComponents().addResponse(kind.slug(), response(kind));
        }
        api.setTags(TAGS.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(tag -> OASFactory.createTag().name(tag.getKey()).description(tag.getValue()))
                .toList());
        api.getPaths().getPathItems().forEach((path, item) -> item.getOperations()
                .forEach((method, operation) -> complete(operation, method, path)));
    }

    /** As {@link Problem} is written; no operation returns one, so the reader of annotations does not see it. */
    private static Schema problem() {
        return object("What went wrong (RFC 9457)")
                .addProperty("type", text("Address of a page that explains it", "/api/problems/refused"))
                .addProperty("title", text("In a few words", "Some fields cannot be taken"))
                .addProperty(
                        "status",
                        of(Schema.SchemaType.INTEGER)
                                .description("The HTTP status")
                                .examples(List.of(422)))
                .addProperty("detail", text("What it means in this case", "Nothing was changed."))
                .addProperty(
                        "errors",
                        of(Schema.SchemaType.ARRAY)
                                .description("Left out where no field is to blame")
                                .items(OASFactory.createSchema().ref("FieldError")));
    }

    private static Schema fieldError() {
        return object("What is wrong with one field")
                .addProperty("field", text("Its path in the body; empty for the body as a whole", "port"))
                .addProperty("reason", text("What is wrong, or what would be right", "from 1 to 65535"));
    }

    private static Schema object(String description) {
        return of(Schema.SchemaType.OBJECT).description(description);
    }

    private static Schema text(String description, String example) {
        return of(Schema.SchemaType.STRING).description(description).examples(List.of(example));
    }

    private static Schema of(Schema.SchemaType type) {
        return OASFactory.createSchema().type(List.of(type));
    }

    private static APIResponse response(ProblemKind kind) {
        return OASFactory.createAPIResponse()
                .description(kind.title() + ". " + kind.meaning())
                .content(OASFactory.createContent()
                        .addMediaType(
                                Problem.MEDIA_TYPE,
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema().ref("Problem"))));
    }

    private static void complete(Operation operation, PathItem.HttpMethod method, String path) {
        operation.setSecurity(List.of(OASFactory.createSecurityRequirement().addScheme(SCHEME, List.of())));
        APIResponses responses = operation.getResponses();
        if (operation.getOperationId().startsWith("add") && responses.hasAPIResponse("200")) {
            responses.addAPIResponse(
                    "201", responses.getAPIResponse("200").description("Made; Location has its address"));
            responses.removeAPIResponse("200");
        }
        for (ProblemKind kind : possible(operation, method, path)) {
            responses.addAPIResponse(
                    String.valueOf(kind.status()),
                    OASFactory.createAPIResponse().ref(RESPONSES + kind.slug()));
        }
    }

    private static List<ProblemKind> possible(Operation operation, PathItem.HttpMethod method, String path) {
        List<ProblemKind> kinds = new ArrayList<>(List.of(
                ProblemKind.NO_TOKEN,
                ProblemKind.NO_RIGHT,
                ProblemKind.NOT_ACCEPTABLE,
                ProblemKind.TOO_MANY,
                ProblemKind.OUR_FAULT,
                ProblemKind.AWAY));
        boolean body = operation.getRequestBody() != null;
        add(kinds, path.contains("{"), ProblemKind.NOT_FOUND);
        add(kinds, body, ProblemKind.UNREADABLE, ProblemKind.TOO_LARGE, ProblemKind.WRONG_TYPE);
        add(kinds, body || operation.getParameters() != null, ProblemKind.REFUSED);
        boolean stoppable = STOPPABLE.contains(operation.getOperationId());
        add(kinds, stoppable || method == PathItem.HttpMethod.DELETE, ProblemKind.IN_USE);
        boolean tagged = TAGGED.contains(method) && !path.contains("/tokens/") && !path.contains("/imports/");
        add(kinds, tagged, ProblemKind.CHANGED_MEANWHILE);
        return kinds;
    }

    private static void add(List<ProblemKind> kinds, boolean possible, ProblemKind... more) {
        if (possible) {
            kinds.addAll(List.of(more));
        }
    }
}
