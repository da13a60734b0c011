package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Models and firmware lines, as a program uses them. */
@QuarkusTest
class CatalogueApiDbTest {

    @Inject
    MarkedPlaces places;

    private Api manager;
    private String word;

    @BeforeEach
    void aManager() {
        word = UUID.randomUUID().toString().substring(0, 8);
        manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, EnumSet.allOf(TokenScope.class), null));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    private String model(String more) {
        return "{\"maker\":\"Tamarack Radio\",\"name\":\"TR-" + word + "\",\"kind\":\"access-point\"," + more + "}";
    }

    private static final String PRICED = "\"listPrice\":249.5,\"currency\":\"eur\",\"termsKind\":\"months\","
            + "\"termsFrom\":\"first-seen\",\"termsMonths\":36,\"termsService\":\"advance\",\"endOfSale\":\"2029-03-31\",\"endOfSaleSource\":\"notice"
            + " 7 (invented)\",\"note\":\"our margin is 12 %\"";

    @Test
    void aModelIsAddedChangedAndRemoved() {
        long line = require(
                        201, manager.post("/firmware-lines", "{\"name\":\"TR " + word + "\",\"scheme\":\"semantic\"}"))
                .getLong("id");
        JsonPath made = require(201, manager.post("/models", model(PRICED + ",\"firmwareLineId\":" + line)));
        String path = "/models/" + made.getLong("id");
        assertThat(made.getString("warranty.words")).isEqualTo("36 months from first seen, advance replacement");
        assertThat(made.getString("warranty.from")).isEqualTo("first-seen");
        assertThat(made.getString("firmwareLine")).isEqualTo("TR " + word);
        assertThat(made.getString("listPrice")).startsWith("249.5");
        assertThat(made.getString("currency")).isEqualTo("EUR");
        assertThat(made.getString("endOfSale.day")).isEqualTo("2029-03-31");
        String tag = manager.get(path).header("ETag");
        JsonPath changed = require(200, manager.patch(path, "{\"listPrice\":259,\"mount\":\"ceiling rail\"}"));
        assertThat(changed.getDouble("listPrice")).isEqualTo(259.0);
        assertThat(changed.getInt("warranty.months")).isEqualTo(36);
        require(
                412,
                manager.request()
                        .header("If-Match", tag)
                        .contentType(Api.MERGE)
                        .body("{\"mount\":\"wall\"}")
                        .patch("/api/v1" + path));
        JsonPath listed = require(200, manager.get("/models?kind=access-point&search=TR-" + word));
        assertThat(listed.getList("items.mount")).containsExactly("ceiling rail");
        require(409, manager.delete("/firmware-lines/" + line));
        require(204, manager.delete(path));
        require(404, manager.get(path));
        require(204, manager.delete("/firmware-lines/" + line));
        assertThat(places.number("select count(*) from audit_entry where subject_name = 'Tamarack Radio TR-" + word
                        + "' and via = 'API'"))
                .isEqualTo(3);
    }

    @Test
    void whatCannotBeTakenIsNamedByField() {
        JsonPath refused = require(
                422,
                manager.post(
                        "/models", model("\"listPrice\":5,\"termsKind\":\"months\",\"endOfSale\":\"2029-03-31\"")));
        assertThat(refused.getList("errors.field")).contains("currency", "termsFrom", "termsMonths", "endOfSaleSource");
        assertThat(require(422, manager.post("/models", model("\"endOfSale\":\"2029-02-30\"")))
                        .getString("errors[0].reason"))
                .contains("a day such as");
        assertThat(require(
                                422,
                                manager.post(
                                        "/firmware-lines",
                                        "{\"name\":\"x\",\"scheme\":\"pattern\",\"pattern\":\"(a*)a*a*a*a*b\"}"))
                        .getString("errors[0].field"))
                .isEqualTo("pattern");
        require(422, manager.get("/models?kind=bridge"));
        long line = require(201, manager.post("/firmware-lines", "{\"name\":\"L " + word + "\",\"scheme\":\"dotted\"}"))
                .getLong("id");
        JsonPath changed = require(
                200, manager.patch("/firmware-lines/" + line, "{\"scheme\":\"pattern\",\"pattern\":\"(\\\\d+)\"}"));
        assertThat(changed.getString("entered.pattern")).isEqualTo("(\\d+)");
    }

    /** RFC 9110, section 13.1.1: what If-Match does not name is not removed. */
    @Test
    void aLineThatWasChangedMeanwhileIsNotRemoved() {
        String path = "/firmware-lines/"
                + require(201, manager.post("/firmware-lines", "{\"name\":\"M " + word + "\",\"scheme\":\"dotted\"}"))
                        .getLong("id");
        String before = manager.get(path).header("ETag");
        require(200, manager.patch(path, "{\"note\":\"taken over by another team\"}"));
        require(412, manager.request().header("If-Match", before).delete("/api/v1" + path));
        String now = manager.get(path).header("ETag");
        require(204, manager.request().header("If-Match", now).delete("/api/v1" + path));
        require(404, manager.get(path));
    }

    /** What a customer sees of a model: its terms, and never what it costs or what we think of it. */
    @Test
    void aViewerSeesTermsAndNoPrice() {
        String path = "/models/"
                + require(201, manager.post("/models", model(PRICED))).getLong("id");
        MarkedPlaces.Place place = places.place("Saltmarsh");
        Api viewer = Api.with(place.viewerToken());
        for (String at : new String[] {path, "/models?search=TR-" + word}) {
            Response seen = viewer.get(at);
            require(200, seen);
            assertThat(seen.asString())
                    .contains("36 months from first seen")
                    .doesNotContain("249")
                    .doesNotContain("margin")
                    .doesNotContain("\"EUR\"");
        }
        String tag = viewer.get(path).header("ETag");
        require(200, manager.patch(path, "{\"listPrice\":1}"));
        assertThat(viewer.get(path).header("ETag")).isEqualTo(tag);
        require(403, viewer.get("/firmware-lines"));
        require(403, viewer.delete(path));
        Api technician = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
        assertThat(require(200, technician.get(path)).getString("currency")).isEqualTo("EUR");
        require(200, technician.get("/firmware-lines"));
        require(403, technician.patch(path, "{\"mount\":\"x\"}"));
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), place.customerId()));
        require(403, narrowed.patch(path, "{\"mount\":\"x\"}"));
        require(403, narrowed.delete(path));
    }
}
