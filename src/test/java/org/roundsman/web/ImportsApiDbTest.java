package org.roundsman.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.EnumSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;
import org.roundsman.web.page.BodyLimits;

/** Tables in and out, as a program uses them. CSV after RFC 4180; problems after RFC 9457. */
@QuarkusTest
class ImportsApiDbTest {

    /** Without a charset that the client of the test would add. */
    private static final RestAssuredConfig AS_WRITTEN = RestAssuredConfig.config()
            .encoderConfig(EncoderConfig.encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false));

    private static final int MOST = 33 * 1024 * 1024;

    @Inject
    MarkedPlaces places;

    private MarkedPlaces.Place place;
    private SignedIn technician;
    private Api api;

    @BeforeEach
    void place() {
        place = places.place("Saltmarsh");
        technician = places.somebody(Role.TECHNICIAN, null);
        api = Api.with(places.token(technician, "stock list", EnumSet.allOf(TokenScope.class), null));
    }

    private static Response require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer;
    }

    private static Response send(Api api, String type, byte[] csv) {
        return api.request().config(AS_WRITTEN).contentType(type).body(csv).post("/api/v1/imports?name=list.csv");
    }

    private String sent(String csv) {
        Response made = require(201, send(api, "text/csv", csv.getBytes(UTF_8)));
        String path = "/imports/" + made.jsonPath().getString("id");
        assertThat(made.header("Location")).endsWith("/api/v1" + path);
        return path;
    }

    private JsonPath ended(String path, String state) {
        await().atMost(Duration.ofMinutes(1))
                .until(() -> api.get(path).jsonPath().getString("state").equals(state));
        return api.get(path).jsonPath();
    }

    @Test
    void aTableIsCheckedLookedAtAndApplied() {
        String name = "Orrin " + place.marker();
        String path = sent("customer,note\r\n" + name + ",fresh\r\n" + name + " two,fresh\r\n");
        JsonPath checked = ended(path, "checked");
        assertThat(checked.getInt("counts.new")).isEqualTo(2);
        assertThat(checked.getBoolean("applicable")).isTrue();
        assertThat(checked.getString("files[0].name")).isEqualTo("list.csv");
        assertThat(checked.getString("files[0].table")).isEqualTo("customers");
        assertThat(api.get("/exports/customers").asString()).doesNotContain(name);
        JsonPath first =
                require(200, api.get(path + "/rows?outcome=new&size=1")).jsonPath();
        assertThat(first.getString("items[0].name")).isEqualTo(name);
        assertThat(first.getString("items[0].changes.find { it.field == 'note' }.new"))
                .isEqualTo("fresh");
        JsonPath second =
                require(200, api.request().get(first.getString("next"))).jsonPath();
        assertThat(second.getList("items.name")).containsExactly(name + " two");
        assertThat(second.getString("next")).isNull();
        require(200, api.post(path + "/apply"));
        assertThat(ended(path, "applied").getString("finishedAt")).isNotNull();
        assertThat(api.get("/exports/customers").asString()).contains(name + ",fresh\r\n");
        String noted = "select count(*) from audit_entry where via = 'API' and token = 'stock list' and actor = '"
                + technician.name() + "' and subject_name = '" + name + "'";
        assertThat(places.number(noted)).isEqualTo(1);
        require(409, api.post(path + "/apply"));
        assertThat(api.get("/imports").jsonPath().getList("items")).hasSize(1);
        require(204, api.delete(path));
        require(404, api.get(path));
        require(404, api.get(path + "/rows"));
    }

    @Test
    void aRefusedRowSaysWhyAndNothingCanBeApplied() {
        String path = sent("customer,site,time_zone\r\nNobody " + place.marker() + ",Shop,Europe/Berlin\r\n");
        JsonPath checked = ended(path, "checked");
        assertThat(checked.getInt("counts.refused")).isEqualTo(1);
        assertThat(checked.getBoolean("applicable")).isFalse();
        JsonPath rows = require(200, api.get(path + "/rows?outcome=refused")).jsonPath();
        assertThat(rows.getInt("items[0].row")).isEqualTo(2);
        assertThat(rows.getString("items[0].faults[0].column")).isEqualTo("customer");
        assertThat(rows.getString("items[0].faults[0].given")).isEqualTo("Nobody " + place.marker());
        assertThat(require(409, api.post(path + "/apply")).jsonPath().getString("detail"))
                .contains("all or nothing");
        require(422, api.get(path + "/rows?outcome=odd"));
        require(200, api.post(path + "/check"));
        assertThat(ended(path, "checked").getInt("counts.refused")).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "text/csv, '', 400",
        "text/csv, 'parrot,cage', 422",
        "text/csv;charset=utf-16, 'customer', 415",
        "application/json, '{}', 415"
    })
    void whatIsNoTableIsRefused(String type, String body, int status) {
        Response answer = require(status, send(api, type, body.getBytes(UTF_8)));
        assertThat(answer.contentType()).isEqualTo("application/problem+json");
    }

    /** RFC 7111, section 4: the charset is for the sender to say. */
    @Test
    void windowsTextIsReadWhenTheSenderSaysSo() {
        byte[] western = ("customer,note\r\nBr\u00fccke " + place.marker() + ",x\r\n").getBytes(ISO_8859_1);
        assertThat(require(422, send(api, "text/csv", western)).jsonPath().getString("errors[0].reason"))
                .contains("not UTF-8");
        String path = "/imports/"
                + require(201, send(api, "text/csv;charset=windows-1252", western))
                        .jsonPath()
                        .getString("id");
        ended(path, "checked");
        assertThat(api.get(path + "/rows").jsonPath().getString("items[0].name"))
                .isEqualTo("Br\u00fccke " + place.marker());
    }

    /** More than other addresses take, less than an upload may have; and more than that. */
    @Test
    void anUploadMayBeLargeButNotTooLarge() {
        String row = "Row of " + place.marker() + " %d," + "n".repeat(1_000) + "\r\n";
        StringBuilder csv = new StringBuilder("customer,note\r\n");
        for (int i = 0; csv.length() <= BodyLimits.USUAL; i++) {
            csv.append(row.formatted(i));
        }
        ended(sent(csv.toString()), "checked");
        Response answer = require(413, send(api, "text/csv", new byte[MOST + 1]));
        assertThat(answer.jsonPath().getString("detail")).contains(String.valueOf(MOST));
    }

    @Test
    void anImportIsItsPersonsAlone() {
        String path = sent("customer,note\r\nOrrin " + place.marker() + ",x\r\n");
        ended(path, "checked");
        Api other = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), null));
        require(404, other.get(path));
        require(404, other.get(path + "/rows"));
        require(404, other.post(path + "/apply"));
        require(404, other.delete(path));
        Api narrowed =
                Api.with(places.token(technician, "one only", EnumSet.allOf(TokenScope.class), place.customerId()));
        require(403, narrowed.get(path));
        require(403, narrowed.get(path + "/rows"));
        require(403, narrowed.post(path + "/apply"));
        Api viewer = Api.with(place.viewerToken());
        require(403, viewer.get(path));
        require(403, send(viewer, "text/csv", "customer\r\nX\r\n".getBytes(UTF_8)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"customers", "sites", "devices", "purchases"})
    void tablesComeAsCsv(String table) {
        MarkedPlaces.Place other = places.place("Brackwater");
        Response answer = require(200, api.get("/exports/" + table + "?customer=" + place.customerId()));
        assertThat(answer.contentType()).startsWith("text/csv");
        String text = new String(answer.asByteArray(), UTF_8);
        assertThat(text).startsWith("customer,").endsWith("\r\n").doesNotContain(other.marker());
        assertThat(text).contains(place.marker());
        Api narrowed = Api.with(places.token(technician, "one only", EnumSet.of(TokenScope.READ), place.customerId()));
        assertThat(require(200, narrowed.get("/exports/" + table)).asString()).isEqualTo(text);
        require(404, narrowed.get("/exports/" + table + "?customer=" + other.customerId()));
        require(403, Api.with(place.viewerToken()).get("/exports/" + table));
    }

    @Test
    void whatIsNoTableOrNoCustomerIsNotThere() {
        require(404, api.get("/exports/secrets"));
        require(404, api.get("/exports/sites?customer=999999999"));
        require(422, api.get("/exports/sites?customer=x"));
    }
}
