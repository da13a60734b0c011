package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.profiles.WrittenProfiles;

/** Profiles as a program writes and uses them; OIDs under the enterprise number for documentation (RFC 5612). */
@QuarkusTest
class ProfilesApiDbTest {

    @Inject
    MarkedPlaces places;

    @Inject
    WrittenProfiles written;

    @Inject
    ProfilesInUse inUse;

    private final ObjectMapper json = new ObjectMapper();
    private String name;
    private long made;
    private Api api;

    @BeforeEach
    void aNameOfItsOwn() {
        name = "maker-" + System.nanoTime();
        made = 0;
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
    }

    @AfterEach
    void nothingStaysInUse() {
        if (made != 0) {
            written.takeOut(made);
        }
    }

    private String text(String column) {
        return "profile: " + name + "\nselect: {object-id: 1.3.6.1.4.1.32473.78, kind: access point}\ntables:\n"
                + "  - entry: 1.3.6.1.4.1.32473.78.5.1\n    index: [radio]\n    columns:\n      " + column + "\n";
    }

    private Response post(String path, Map<String, ?> body) {
        return api.post(path, json.valueToTree(body).toString());
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    private String add(String column) {
        Response added = post("/profiles", Map.of("text", text(column), "note", "first try"));
        made = require(201, added).getLong("profileId");
        assertThat(added.header("Location")).endsWith("/api/v1/profiles/" + made + "/versions/1");
        return "/profiles/" + made;
    }

    @Test
    void aProfileIsWrittenUsedRolledBackAndTakenOut() {
        String path = add("radio.clients: 4");
        assertThat(inUse.current().names()).doesNotContain(name);
        assertThat(require(200, post(path + "/use", Map.of("version", 1))).getInt("inUse"))
                .isEqualTo(1);
        assertThat(inUse.current().names()).contains(name);
        Map<String, Object> next = Map.of("text", text("radio.clients: 5"), "basedOn", 1, "note", "other column");
        assertThat(require(201, post(path + "/versions", next)).getInt("number"))
                .isEqualTo(2);
        JsonPath late = require(422, post(path + "/versions", next));
        assertThat(late.getString("errors[0].field")).isEqualTo("basedOn");
        assertThat(require(200, api.get(path + "/versions/2/consequences")).getList("faults"))
                .isEmpty();
        require(200, post(path + "/use", Map.of("version", 2, "accept", true)));
        require(200, post(path + "/use", Map.of("version", 1)));
        JsonPath shown = require(200, api.get(path));
        assertThat(shown.getInt("inUse")).isEqualTo(1);
        assertThat(shown.getInt("latest")).isEqualTo(2);
        assertThat(shown.getList("versions.number", Integer.class)).containsExactly(2, 1);
        assertThat(require(200, api.get(path + "/versions/2")).getString("text"))
                .isEqualTo(text("radio.clients: 5"));
        assertThat(require(200, api.post(path + "/take-out")).getString("inUse"))
                .isNull();
        assertThat(inUse.current().names()).doesNotContain(name);
        assertThat(places.number("select count(*) from audit_entry where subject = 'profile' and via = 'API' and"
                        + " subject_id = " + made))
                .as("added, used, changed, used, rolled back, taken out")
                .isEqualTo(6);
    }

    @Test
    void faultsHaveTheirLineAndKeepAVersionFromUse() {
        JsonPath check = require(200, post("/profiles/check", Map.of("text", text("radio.cleints: 4"))));
        assertThat(check.getInt("faults[0].line")).isEqualTo(7);
        assertThat(check.getString("faults[0].key")).isNotEmpty();
        assertThat(check.getString("faults[0].reason")).contains("did you mean radio.clients?");
        assertThat(require(200, post("/profiles/check", Map.of("text", text("radio.clients: 4"))))
                        .getList("faults"))
                .isEmpty();
        assertThat(written.named(name)).as("a check keeps nothing").isEmpty();
        String path = add("radio.cleints: 4");
        assertThat(require(200, api.get(path + "/versions/1")).getInt("faults[0].line"))
                .isEqualTo(7);
        JsonPath refused = require(422, post(path + "/use", Map.of("version", 1, "accept", true)));
        assertThat(refused.getString("errors[0].field")).isEqualTo("version");
    }

    @Test
    void whatCannotBeSavedIsNamed() {
        add("radio.clients: 4");
        JsonPath twice = require(422, post("/profiles", Map.of("text", text("radio.clients: 4"))));
        assertThat(twice.getString("errors[0].reason")).contains("already");
        assertThat(require(422, api.post("/profiles", "{}")).getString("errors[0].field"))
                .isEqualTo("text");
        require(404, api.get("/profiles/999999999"));
        require(404, api.get("/profiles/" + made + "/versions/9"));
        require(404, api.get("/profiles/" + made + "/versions/9/consequences"));
        require(404, post("/profiles/" + made + "/use", Map.of("version", 9)));
        require(404, api.post("/profiles/999999999/take-out"));
    }

    @Test
    void builtInProfilesAreListedInPiecesAndShown() {
        JsonPath first = require(200, api.get("/profiles/built-in?size=1"));
        assertThat(first.getList("items")).hasSize(1);
        String one = first.getString("items[0].name");
        assertThat(first.getString("next")).endsWith("after=" + one);
        assertThat(require(200, api.get("/profiles/built-in?after=" + one)).getList("items.name"))
                .isNotEmpty()
                .doesNotContain(one);
        JsonPath shown = require(200, api.get("/profiles/built-in/" + one));
        assertThat(shown.getString("origin")).isEqualTo("shipped");
        assertThat(shown.getString("text")).contains("profile: " + one);
        require(404, api.get("/profiles/built-in/no-such-maker"));
    }

    /** OWASP ASVS 5.0, 8.2.1 and 8.4.1: profiles are the firm's; consequences name devices of all customers. */
    @Test
    void viewersAndNarrowedTokensAreKeptOut() {
        String path = add("radio.clients: 4");
        MarkedPlaces.Place place = places.place("Saltmarsh");
        Api viewer = Api.with(place.viewerToken());
        require(403, viewer.get("/profiles"));
        require(403, viewer.get(path));
        require(403, viewer.post(path + "/take-out"));
        Api narrowed =
                Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), place.customerId()));
        require(200, narrowed.get(path));
        require(403, narrowed.get(path + "/versions/1/consequences"));
        require(403, narrowed.post(path + "/use", "{\"version\":1}"));
        require(403, narrowed.post("/profiles", "{\"text\":\"profile: x\"}"));
        Api manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, Set.of(TokenScope.READ), null));
        assertThat(require(200, manager.get("/profiles?size=500")).getList("items.id", Long.class))
                .contains(made);
        require(403, manager.post(path + "/use", "{\"version\":1}"));
        require(
                403,
                Api.with(places.token(Role.OWNER, null, Set.of(TokenScope.CHANGE), null))
                        .post(path + "/use", "{\"version\":1}"));
        assertThat(inUse.current().names()).doesNotContain(name);
    }
}
