package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.ParseOptions;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The description of the API, against the rules of OpenAPI 3.1 and against the program. */
@QuarkusTest
class OpenApiDbTest {

    private String text;
    private JsonNode api;

    @BeforeEach
    void read() throws IOException {
        text = given().get("/api/v1/openapi.json").asString();
        api = new ObjectMapper().readTree(text);
    }

    private void eachOperation(BiConsumer<String, JsonNode> look) {
        api.path("paths").properties().forEach(path -> path.getValue()
                .properties()
                .forEach(operation -> look.accept(
                        operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey(), operation.getValue())));
    }

    /** The reader of the Swagger project, which knows the specification. */
    @Test
    void aReaderOfAnotherProjectFindsNoFault() {
        ParseOptions options = new ParseOptions();
        options.setResolve(true);
        SwaggerParseResult result = new OpenAPIV3Parser().readContents(text, null, options);
        assertThat(result.getMessages()).isEmpty();
        assertThat(result.getOpenAPI().getPaths()).isNotEmpty();
    }

    @Test
    void everyAddressOfTheApiIsInItAndNoOther() {
        Set<String> described = new HashSet<>();
        eachOperation((operation, node) -> described.add(operation));
        Set<String> answered = Addresses.all().stream()
                .filter(a -> a.api() && !a.method().equals("HEAD"))
                .map(Addresses.Address::toString)
                .collect(Collectors.toSet());
        assertThat(described).isEqualTo(answered);
    }

    /** OpenAPI 3.1.0, 4.8.10: ids are unique; 4.8.16: there are responses. The rest is our own rule. */
    @Test
    void everyOperationSaysWhatItDoesAndWhatCanGoWrong() {
        List<String> ids = new ArrayList<>();
        eachOperation((operation, node) -> {
            ids.add(node.path("operationId").asText());
            assertThat(node.path("summary").asText()).as(operation).isNotBlank();
            assertThat(node.path("tags")).as(operation).hasSize(1);
            assertThat(node.path("security").path(0).has("token")).as(operation).isTrue();
            assertThat(node.path("security")).as(operation).hasSize(1);
            Set<String> statuses = fields(node.path("responses"));
            assertThat(statuses)
                    .as(operation)
                    .contains("401", "403", "429", "500")
                    .anyMatch(s -> s.startsWith("2"));
            if (operation.contains("{")) {
                assertThat(statuses).as(operation).contains("404");
            }
            if (node.has("requestBody")) {
                assertThat(statuses).as(operation).contains("400", "413", "415", "422");
                assertThat(fields(node.path("requestBody").path("content")))
                        .as(operation)
                        .allMatch(type -> type.endsWith("json") || type.equals("text/csv"));
            }
            if (operation.startsWith("POST") && operation.endsWith("s")) {
                assertThat(statuses).as(operation).contains("201").doesNotContain("200");
            }
        });
        assertThat(ids).doesNotHaveDuplicates().doesNotContain("");
    }

    @Test
    void everyReferenceLeadsSomewhere() {
        List<JsonNode> references = api.findValues("$ref");
        assertThat(references).hasSizeGreaterThan(50);
        for (JsonNode reference : references) {
            assertThat(reference.asText()).startsWith("#/");
            assertThat(api.at(reference.asText().substring(1)).isMissingNode())
                    .as(reference.asText())
                    .isFalse();
        }
    }

    @Test
    void everyTagIsExplained() {
        Set<String> explained = StreamSupport.stream(api.path("tags").spliterator(), false)
                .map(tag -> tag.path("name").asText())
                .collect(Collectors.toSet());
        eachOperation((operation, node) -> assertThat(explained)
                .as(operation)
                .contains(node.path("tags").path(0).asText()));
    }

    /** 15.3.1: what comes in as a secret is marked as never going out. */
    @Test
    void secretsAreWrittenOnlyAndExamplesAreThere() {
        JsonNode entry = api.at("/components/schemas/CredentialsEntry/properties");
        for (String secret : List.of("community", "authPassword", "privPassword")) {
            assertThat(entry.path(secret).path("writeOnly").asBoolean())
                    .as(secret)
                    .isTrue();
        }
        assertThat(fields(api.at("/components/schemas/Credentials/properties")))
                .doesNotContain("community", "authPassword", "privPassword");
        assertThat(api.at("/components/schemas/CustomerEntry/properties/name/examples/0")
                        .asText())
                .isEqualTo("Pebblegate Dental");
        assertThat(api.at("/components/securitySchemes/token/scheme").asText()).isEqualTo("bearer");
    }

    @Test
    void yamlSaysTheSame() throws IOException {
        JsonNode yaml =
                new YAMLMapper().readTree(given().get("/api/v1/openapi.yaml").asString());
        assertThat(yaml).isEqualTo(api);
        assertThat(yaml.path("openapi").asText()).startsWith("3.1");
    }

    @Test
    void theGuideListsEveryOperation() {
        String guide = given().get("/api/docs").asString();
        eachOperation((operation, node) -> assertThat(guide)
                .contains(operation.split(" ")[1])
                .contains(node.path("summary").asText().replace("'", "&#39;")));
    }

    private static Set<String> fields(JsonNode node) {
        return node.properties().stream().map(Map.Entry::getKey).collect(Collectors.toSet());
    }
}
