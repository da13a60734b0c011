package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.rules.RuleBook;

/** Rules as a program reads and sets them. */
@QuarkusTest
class RulesApiDbTest {

    private static final CustomerScope EVERYONE = CustomerScope.everyone();

    @Inject
    MarkedPlaces places;

    @Inject
    RuleBook book;

    private final ObjectMapper json = new ObjectMapper();
    private MarkedPlaces.Place place;
    private Api api;

    @BeforeEach
    void aPlace() {
        place = places.place("Saltmarsh");
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
    }

    @AfterEach
    void nothingStaysSet() {
        book.overrides(EVERYONE).forEach(one -> book.remove(EVERYONE, one.id(), one.version()));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return status == 204 ? null : answer.jsonPath();
    }

    private Response post(String path, Map<String, ?> body) {
        return api.post(path, json.valueToTree(body).toString());
    }

    private Response patch(String path, String changes, String match) {
        return api.request()
                .header("If-Match", match)
                .contentType(Api.MERGE)
                .body(changes)
                .patch("/api/v1" + path);
    }

    @Test
    void theRulesAreListedWithTheirExplanations() {
        JsonPath rules = require(200, api.get("/rules"));
        assertThat(rules.getList("items")).hasSize(AlarmType.values().length);
        JsonPath busy = require(200, api.get("/rules/utilisation-high"));
        assertThat(busy.getString("shipped.major")).isEqualTo("85");
        assertThat(busy.getInt("shipped.raiseAfter")).isEqualTo(900);
        assertThat(busy.getString("source")).contains("Common practice");
        require(404, api.get("/rules/nonsense"));
    }

    @Test
    void valuesAreSetChangedAndTakenBackAndADeviceShowsWhereTheyComeFrom() {
        String path = "/rules/utilisation-high/overrides";
        Response added = post(
                path,
                Map.of(
                        "level",
                        "site",
                        "targetId",
                        place.siteId(),
                        "reason",
                        "full every evening",
                        "values",
                        Map.of("major", "95", "raiseAfter", 1800)));
        long id = require(201, added).getLong("id");
        assertThat(added.header("Location")).endsWith(path + "/" + id);
        JsonPath again = require(
                422,
                post(
                        path,
                        Map.of(
                                "level",
                                "site",
                                "targetId",
                                place.siteId(),
                                "reason",
                                "x",
                                "values",
                                Map.of("major", "95"))));
        assertThat(again.getString("errors[0].field")).isEqualTo("basedOn");
        JsonPath device = require(200, api.get("/devices/" + place.deviceId() + "/rules"));
        assertThat(device.getString("items.find { it.type == 'utilisation-high' }.values.major"))
                .isEqualTo("95");
        assertThat(device.<String>getList("items.find { it.type == 'utilisation-high' }.set.field"))
                .containsExactlyInAnyOrder("major", "raiseAfter");
        assertThat(device.getString("items.find { it.type == 'utilisation-high' }.set[0].level"))
                .isEqualTo("site");
        changedAndTakenBack(path + "/" + id);
    }

    private void changedAndTakenBack(String one) {
        String tag = api.get(one).header("ETag");
        require(200, patch(one, "{\"values\":{\"major\":null,\"enabled\":false}}", tag));
        assertThat(require(200, api.get(one)).getMap("values")).isEqualTo(Map.of("enabled", false, "raiseAfter", 1800));
        require(412, patch(one, "{\"reason\":\"other\"}", tag));
        require(422, api.patch(one, "{\"level\":\"all\",\"targetId\":0}"));
        require(422, api.patch(one, "{\"values\":{\"nonsense\":1}}"));
        require(204, api.delete(one));
        require(404, api.get(one));
    }

    @Test
    void anAccountManagerReadsAndDoesNotSet() {
        Api manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, EnumSet.allOf(TokenScope.class), null));
        require(200, manager.get("/rules"));
        require(200, manager.get("/rules/cpu-high/overrides"));
        require(403, manager.post("/rules/cpu-high/overrides", "{\"level\":\"all\"}"));
        Api reader = Api.with(places.token(Role.OWNER, null, EnumSet.of(TokenScope.READ), null));
        require(403, reader.post("/rules/cpu-high/overrides", "{\"level\":\"all\"}"));
    }
}
