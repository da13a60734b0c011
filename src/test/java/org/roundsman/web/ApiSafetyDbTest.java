package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.config.HttpClientConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Base64;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;
import org.roundsman.web.page.BodyLimits;

/** Checks after OWASP ASVS 5.0; the requirement's number stands beside each. */
@QuarkusTest
class ApiSafetyDbTest {

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    private MarkedPlaces.Place place;
    private String token;
    private Api api;

    @BeforeEach
    void place() {
        place = places.place("Saltmarsh");
        token = places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null);
        api = Api.with(token);
    }

    /** 11.5.1: at least 128 bits of a cryptographic random source; ours have 256, and bits fall either way. */
    @Test
    void tokensAreLongAndRandom() {
        SignedIn person = places.somebody(Role.TECHNICIAN, null);
        Set<String> seen = new HashSet<>();
        int[] ones = new int[256];
        int tokens = 40;
        for (int i = 0; i < tokens; i++) {
            String one = places.token(person, "token " + i, EnumSet.of(TokenScope.READ), null);
            byte[] bits = Base64.getUrlDecoder().decode(one.substring("roundsman_".length()));
            assertThat(bits).hasSize(32);
            IntStream.range(0, 256).filter(b -> (bits[b / 8] >> b % 8 & 1) == 1).forEach(b -> ones[b]++);
            seen.add(one);
        }
        assertThat(seen).hasSize(tokens);
        assertThat(ones).as("no bit stands still").doesNotContain(0).doesNotContain(tokens);
    }

    /** 14.2.1: RFC 6750 section 2.3 would allow it; we do not. */
    @ParameterizedTest
    @ValueSource(strings = {"access_token", "token", "authorization", "bearer"})
    void aTokenInTheAddressOpensNothing(String parameter) {
        assertThat(given().queryParam(parameter, token).get("/api/v1/me").statusCode())
                .isEqualTo(401);
        assertThat(given().formParam(parameter, token).post("/api/v1/customers").statusCode())
                .isEqualTo(401);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Basic ", "bearer", "Token ", ""})
    void anotherSchemeOpensNothing(String scheme) {
        Response answer = given().header("Authorization", scheme + token).get("/api/v1/me");
        assertThat(answer.statusCode()).isEqualTo(401);
    }

    /** 15.3.1. */
    @Test
    void nothingEverHoldsAnSnmpSecret() {
        String json =
                "{\"name\":\"%s\",\"version\":\"v3\",\"userName\":\"rounds\",\"level\":\"auth-priv\",\"authProtocol\":"
                        + "\"SHA256\",\"authPassword\":\"tidewater-42-a\",\"privProtocol\":\"AES128\",\"privPassword\":\"tidewater-42-p\"}";
        Response made = api.post("/credentials", json.formatted("keys of " + place.marker()));
        assertThat(made.statusCode()).isEqualTo(201);
        String id = made.jsonPath().getString("id");
        for (String path : List.of(
                "/credentials",
                "/credentials/" + id,
                "/credentials/" + place.credentialId(),
                "/devices/" + place.deviceId(),
                "/changes?size=500")) {
            assertThat(api.get(path).asString())
                    .as(path)
                    .doesNotContain("tidewater-42")
                    .doesNotContain("quayside-secret");
        }
        Response changed = api.patch("/credentials/" + id, "{\"authPassword\":\"ebb-and-flow-7\"}");
        assertThat(changed.statusCode()).isEqualTo(200);
        assertThat(changed.asString()).doesNotContain("ebb-and-flow");
        assertThat(api.patch("/credentials/" + id, "{\"privPassword\":\"short\"}")
                        .asString())
                .contains("privPassword", "at least 8 characters")
                .doesNotContain("\"short\"");
    }

    /** 15.3.3: refused rather than ignored, so that a typing error does not look like a success. */
    @ParameterizedTest
    @ValueSource(strings = {"role", "id", "customerId", "createdAt"})
    void aFieldThatIsNotThereToBeSetIsRefusedByName(String field) {
        String json = "{\"name\":\"Other\",\"" + field + "\":\"1\"}";
        for (Response answer :
                List.of(api.patch("/customers/" + place.customerId(), json), api.post("/customers", json))) {
            assertThat(answer.statusCode()).isEqualTo(422);
            assertThat(answer.jsonPath().getString("errors[0].field")).isEqualTo(field);
        }
        assertThat(api.get("/customers/" + place.customerId()).jsonPath().getString("name"))
                .isNotEqualTo("Other");
    }

    /** RFC 8259, 8.2: JSON can write half of a surrogate pair; what comes of it is unpredictable, so it is refused in words. */
    @Test
    void halfOfACharacterIsRefusedAndNotAFaultOfOurs() {
        requireProblem(400, api.post("/customers", "{\"\\ud800\":1}"));
        requireProblem(422, api.post("/customers", "{\"name\":\"\\udfff\"}"));
        requireProblem(
                422,
                api.post(
                        "/customers/" + place.customerId() + "/sites",
                        "{\"name\":\"Pier\",\"hours\":[{\"weekday\":1,\"opens\":\"\\ud83d\"}]}"));
    }

    /** 16.5.1 and 4.1.1: every refusal is a problem after RFC 9457 that tells nothing about our insides. */
    @Test
    void errorsAreProblemsWithoutInsides() {
        String device = "/api/v1/devices/" + place.deviceId();
        requireProblem(404, api.get("/no-such-thing"));
        requireProblem(404, api.get("/devices/abc"));
        requireProblem(404, api.get("/devices/999999999"));
        requireProblem(404, api.request().get("/api"));
        requireProblem(404, api.request().get("/api/v2/devices"));
        requireProblem(405, api.request().put(device));
        requireProblem(406, api.request().accept("image/png").get("/api/v1/me"));
        requireProblem(415, api.request().contentType("text/plain").body("x").post("/api/v1/customers"));
        requireProblem(415, api.request().formParam("name", "x").post("/api/v1/customers"));
        requireProblem(400, api.request().contentType("application/json").post("/api/v1/customers"));
        requireProblem(400, api.post("/customers", "{\"name\":"));
        requireProblem(401, given().get("/api/v1/me"));
        requireProblem(422, api.post("/customers", "{\"name\":\"a\\u0000b\"}"));
        requireProblem(422, api.post("/customers", "{}"));
        for (String path : List.of(
                "/customers?size=0",
                "/customers?size=all",
                "/devices?site=x",
                "/devices?after=x",
                "/devices?kind=toaster",
                "/changes?from=yesterday")) {
            requireProblem(422, api.get(path));
        }
    }

    /** RFC 9110, section 15.5.6: with 405 come the methods that the address takes, and they are those. */
    @ParameterizedTest
    @ValueSource(strings = {"/devices/DEVICE", "/devices", "/devices/DEVICE/port", "/customers/CUSTOMER", "/me"})
    void aMethodThatAnAddressDoesNotTakeIsAnsweredWithThoseThatItTakes(String template) {
        String path = "/api/v1"
                + template.replace("DEVICE", String.valueOf(place.deviceId()))
                        .replace("CUSTOMER", String.valueOf(place.customerId()));
        Response refused = api.request().request("SEARCH", path);
        requireProblem(405, refused);
        List<String> allowed = List.of(refused.header("Allow").split(", "));
        for (String method : List.of("GET", "HEAD", "POST", "PUT", "PATCH")) {
            Response answer =
                    api.request().contentType("application/json").body("[]").request(method, path);
            assertThat(answer.statusCode() != 405).as(method + " " + path).isEqualTo(allowed.contains(method));
        }
    }

    private static void requireProblem(int status, Response answer) {
        String body = answer.asString();
        assertThat(answer.statusCode()).as(body).isEqualTo(status);
        assertThat(answer.contentType()).as(status + ": " + body).startsWith("application/problem+json");
        assertThat(answer.jsonPath().getInt("status")).isEqualTo(status);
        assertThat(answer.jsonPath().getString("title")).isNotBlank();
        assertThat(given().get(answer.jsonPath().getString("type")).statusCode())
                .isEqualTo(200);
        assertThat(body).doesNotContainIgnoringCase("exception").doesNotContain("jackson", "java", "org.");
    }

    /** 4.1.1: RFC 8259 texts are UTF-8. */
    @Test
    void answersSayWhatTheyAre() {
        String name = "Grüße — 東 " + place.marker();
        Response made = api.post("/customers", "{\"name\":\"" + name + "\"}");
        assertThat(made.contentType()).startsWith("application/json");
        assertThat(made.jsonPath().getString("name")).isEqualTo(name);
        assertThat(api.get("/me").contentType()).startsWith("application/json");
    }

    /** 14.3.2, 3.4.4, and no cookie is set. */
    @ParameterizedTest
    @ValueSource(strings = {"/me", "/devices", "/no-such-thing"})
    void answersAreNotStoredAndSetNoCookie(String path) {
        Response answer = api.get(path);
        assertThat(answer.header("Cache-Control")).isEqualTo("no-store");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.headers().hasHeaderWithName("Set-Cookie")).isFalse();
    }

    /** 3.4.2. */
    @Test
    void noOtherSiteIsLetIn() {
        Response answer =
                api.request().header("Origin", "https://elsewhere.example").get("/api/v1/me");
        assertThat(answer.headers().hasHeaderWithName("Access-Control-Allow-Origin"))
                .isFalse();
    }

    /** 5.2.1: more than the service takes, with the length said before and with chunks. */
    @Test
    void aBodyThatIsTooLargeIsRefused() throws IOException, InterruptedException {
        byte[] large = ("{\"name\":\"" + "x".repeat((int) BodyLimits.USUAL) + "\"}").getBytes(UTF_8);
        for (HttpRequest.BodyPublisher body : List.of(
                HttpRequest.BodyPublishers.ofByteArray(large),
                HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(large)))) {
            HttpRequest request = HttpRequest.newBuilder(
                            URI.create("http://127.0.0.1:" + RestAssured.port + "/api/v1/customers"))
                    .version(HttpClient.Version.HTTP_1_1)
                    .header("Authorization", "Bearer " + token)
                    .header("Content-Type", "application/json")
                    .POST(body)
                    .build();
            HttpResponse<String> answer =
                    HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
            assertThat(answer.statusCode()).isEqualTo(413);
            assertThat(answer.body()).doesNotContainIgnoringCase("exception");
            if (body.contentLength() >= 0) {
                assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
            }
        }
    }

    /** 3.5.1: the API needs no anti-forgery token, since no cookie opens it; pages need theirs whatever the body says it is. */
    @ParameterizedTest
    @ValueSource(strings = {"application/json", "text/plain", "text/csv", "application/octet-stream"})
    void pagesTakeNoBodyThatIsNoForm(String type) {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String path = "/devices/" + place.deviceId() + "/remove";
        browser.get("/customers/new");
        assertThat(browser.request()
                        .contentType(type)
                        .body("x".getBytes(UTF_8))
                        .post(path)
                        .statusCode())
                .isEqualTo(400);
        assertThat(browser.request().post(path).statusCode()).isEqualTo(400);
        assertThat(browser.request()
                        .contentType(ContentType.URLENC)
                        .formParam("x", "y")
                        .post(path)
                        .statusCode())
                .isEqualTo(400);
        assertThat(browser.get("/devices/" + place.deviceId()).statusCode()).isEqualTo(200);
        assertThat(browser.post("/devices/" + place.deviceId() + "/edit", path, Map.of())
                        .statusCode())
                .isEqualTo(303);
    }

    @Test
    void manyWrongTokensAreSlowedDownWhileGoodOnesGoOn() throws UnknownHostException {
        assertThat(api.get("/me").statusCode()).isEqualTo(200);
        // From an address of its own, since the others of this machine go on working.
        RestAssuredConfig elsewhere = RestAssuredConfig.config()
                .httpClient(HttpClientConfig.httpClientConfig()
                        .setParam("http.route.local-address", InetAddress.getByName("127.0.0.77")));
        Response last = null;
        for (int i = 0; i < 400 && (last == null || last.statusCode() != 429); i++) {
            last = Api.with("roundsman_" + i).request().config(elsewhere).get("/api/v1/me");
        }
        assertThat(last.statusCode()).isEqualTo(429);
        assertThat(last.header("Retry-After")).matches("[1-9]\\d?");
        assertThat(last.contentType()).isEqualTo("application/problem+json");
        assertThat(api.request().config(elsewhere).get("/api/v1/me").statusCode())
                .isEqualTo(200);
    }
}
