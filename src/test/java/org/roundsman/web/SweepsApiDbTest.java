package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.discovery.Neighbourhood;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;

/** Looking for devices, as a program does it: agents of SNMP on loopback, asked over UDP. */
@QuarkusTest
class SweepsApiDbTest {

    private static final int FIRST = 9_400;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    private Neighbourhood street;
    private FleetFixture.Place place;
    private SignedIn technician;
    private Api api;
    private String at;

    @BeforeEach
    void agents() throws IOException {
        street = new Neighbourhood();
        place = fixture.place("Saltmarsh");
        technician = places.somebody(Role.TECHNICIAN, null);
        api = Api.with(places.token(technician, "finder", EnumSet.allOf(TokenScope.class), null));
        at = "/sites/" + place.siteId();
    }

    @AfterEach
    void close() throws IOException {
        street.close();
    }

    private static Response require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer;
    }

    private static Response put(Api api, String at, String json) {
        return api.request().contentType("application/json").body(json).put("/api/v1" + at + "/sweep-plan");
    }

    private String plan(String ranges) {
        return "{\"ranges\":[\"" + ranges + "\"],\"ports\":[" + street.port() + "]}";
    }

    private long noted(String action, String subject) {
        return places.number("select count(*) from audit_entry where via = 'API' and token = 'finder' and actor = '"
                + technician.name() + "' and action = '" + action + "' and subject = '" + subject
                + "' and customer_id = " + place.customerId());
    }

    private JsonPath swept() {
        Response started = require(201, api.post(at + "/sweeps"));
        assertThat(started.header("Location")).endsWith("/api/v1" + at + "/sweeps/latest");
        await().atMost(Duration.ofMinutes(2)).until(() -> api.get(at + "/sweeps/latest")
                .jsonPath()
                .getString("state")
                .equals("done"));
        return api.get(at + "/sweeps/latest").jsonPath();
    }

    @Test
    void aSiteIsPlannedSweptAndAdopted() throws IOException {
        planThreeHouses();
        JsonPath done = swept();
        assertThat(done.getInt("answered")).isEqualTo(3);
        assertThat(done.getInt("asked")).isEqualTo(6).isEqualTo(done.getInt("total"));
        JsonPath found =
                require(200, api.get(at + "/sweeps/latest/findings?size=2")).jsonPath();
        assertThat(found.getList("items.standing")).containsExactly("new", "new");
        assertThat(found.getString("items[0].addresses[0].host")).isEqualTo("127.84.0.1");
        assertThat(found.getString("items[0].facts.name")).isEqualTo("ap-" + (FIRST + 1) + ".pier.example");
        JsonPath rest = require(200, api.request().get(found.getString("next"))).jsonPath();
        assertThat(rest.getList("items")).hasSize(1);
        assertThat(require(200, api.get(at + "/sweeps/latest/unanswered"))
                        .jsonPath()
                        .getList("items.deviceId"))
                .hasSize(1);
        String first = found.getString("items[0].id");
        String adopt = at + "/sweeps/latest/adopt";
        String two = "{\"lines\":[{\"finding\":%s},{\"finding\":" + found.getString("items[1].id")
                + ",\"name\":\"%s\",\"kind\":\"gateway\"}]}";
        Response refused = require(422, api.post(adopt, two.formatted(first, "")));
        assertThat(refused.jsonPath().getList("errors.field")).containsExactly("lines[1].name");
        assertThat(noted("added", "device")).isZero();
        JsonPath adopted = require(200, api.post(adopt, two.formatted(first, "Ticket office")))
                .jsonPath();
        assertThat(adopted.getInt("added")).isEqualTo(2);
        assertThat(api.get("/devices?site=" + place.siteId()).asString()).contains("Ticket office");
        assertThat(noted("added", "device")).isEqualTo(2);
        assertThat(noted("started", "sweep")).isEqualTo(1);
        assertThat(noted("changed", "sweep plan")).isEqualTo(1);
        Response again =
                require(422, api.post(adopt, "{\"lines\":[{\"finding\":" + first + "},{\"finding\":999999999}]}"));
        assertThat(again.jsonPath().getList("errors.field")).containsExactly("lines[0]", "lines[1]");
    }

    private void planThreeHouses() throws IOException {
        for (int i = 1; i <= 3; i++) {
            street.house("127.84.0." + i, 2, "quayside-secret", FIRST + i);
        }
        require(404, api.get(at + "/sweeps/latest"));
        assertThat(require(200, put(api, at, plan("127.84.0.1-127.84.0.6")))
                        .jsonPath()
                        .getList("ranges"))
                .isEqualTo(List.of("127.84.0.1-127.84.0.6"));
    }

    /** Nobody answers at these, so that the sweep lasts until it is cancelled. */
    @Test
    void aSweepIsCancelledAndResumed() {
        require(200, put(api, at, plan("127.85.0.0/21")));
        require(201, api.post(at + "/sweeps"));
        Response second = require(409, api.post(at + "/sweeps"));
        assertThat(second.jsonPath().getString("detail")).contains("running already");
        assertThat(require(200, api.post(at + "/sweeps/latest/cancel"))
                        .jsonPath()
                        .getString("state"))
                .isEqualTo("cancelled");
        assertThat(require(200, api.post(at + "/sweeps/latest/resume"))
                        .jsonPath()
                        .getString("state"))
                .isEqualTo("running");
        require(200, api.post(at + "/sweeps/latest/cancel"));
        assertThat(noted("cancelled", "sweep")).isEqualTo(2);
        assertThat(noted("resumed", "sweep")).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "'{}', ranges",
        "'{\"ranges\":[\"300.1.1.1\"]}', ranges",
        "'{\"ranges\":[\"10.0.0.0/8\"]}', ranges",
        "'{\"ranges\":[\"192.0.2.1\"],\"ports\":[0]}', ports",
        "'{\"ranges\":[\"192.0.2.1\"],\"credentials\":[]}', credentials",
        "'{\"ranges\":[\"192.0.2.1\"],\"speed\":1}', speed"
    })
    void aBadPlanIsNamedWithItsField(String json, String field) {
        assertThat(require(422, put(api, at, json)).jsonPath().getList("errors.field"))
                .containsExactly(field);
    }

    /** RFC 9110, section 13.1.1. */
    @Test
    void aPlanOnAnOldStateIsRefused() {
        String before = api.get(at + "/sweep-plan").header("ETag");
        require(200, put(api, at, plan("127.84.1.1")));
        Response late = api.request()
                .contentType("application/json")
                .header("If-Match", before)
                .body(plan("127.84.1.2"))
                .put("/api/v1" + at + "/sweep-plan");
        require(412, late);
    }

    @Test
    void othersSitesAreNotThereAndViewersAndScopesAreHeldBack() {
        MarkedPlaces.Place other = places.place("Brackwater");
        Api narrowed =
                Api.with(places.token(technician, "one only", EnumSet.allOf(TokenScope.class), other.customerId()));
        require(404, narrowed.get(at + "/sweep-plan"));
        require(404, put(narrowed, at, plan("127.84.1.1")));
        require(404, narrowed.post(at + "/sweeps"));
        require(404, narrowed.get(at + "/sweeps/latest"));
        require(404, narrowed.get(at + "/sweeps/latest/findings"));
        require(404, narrowed.post(at + "/sweeps/latest/adopt", "{\"lines\":[{\"finding\":999999999}]}"));
        Api viewer = Api.with(other.viewerToken());
        require(403, viewer.get("/sites/" + other.siteId() + "/sweep-plan"));
        require(403, viewer.post("/sites/" + other.siteId() + "/sweeps"));
        Api changing =
                Api.with(places.token(technician, "no visits", EnumSet.of(TokenScope.READ, TokenScope.CHANGE), null));
        require(403, changing.post(at + "/sweeps"));
    }
}
