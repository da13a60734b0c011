package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.EnumSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.claims.UnitsFixture;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Claims and spares, as a program handles them. */
@QuarkusTest
class ClaimsApiDbTest {

    @Inject
    FleetFixture fixture;

    @Inject
    UnitsFixture units;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private final String old = UnitsFixture.serial();
    private final String fresh = UnitsFixture.serial();
    private FleetFixture.Place place;
    private Api api;

    @BeforeEach
    void aUnitInItsPlace() {
        place = fixture.place("Saltmarsh");
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.of(TokenScope.READ, TokenScope.CHANGE), null));
        units.says(place.deviceId(), place.siteId(), clock.instant().minus(Duration.ofDays(2)), old);
        units.follow();
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    @Test
    void aClaimIsOpenedMovedAndListed() {
        String device = "{\"device\":" + place.deviceId() + ",\"fault\":\"Dead\"}";
        JsonPath claim = require(201, api.post("/claims", device));
        String at = "/claims/" + claim.getLong("id");
        assertThat(claim.getString("serial")).isEqualTo(old);
        assertThat(claim.getString("state")).isEqualTo("opened");
        assertThat(claim.getList("failure")).isNotEmpty();
        assertThat(require(422, api.post("/claims", device)).getString("errors[0].field"))
                .isEqualTo("unit");
        assertThat(require(422, api.post(at + "/move", "{\"state\":\"closedd\"}"))
                        .getString("errors[0].field"))
                .isEqualTo("state");
        assertThat(require(422, api.post(at + "/move", "{\"state\":\"replaced\"}"))
                        .getString("errors[0].reason"))
                .contains("cannot become replaced");
        assertThat(require(200, api.post(at + "/move", "{\"state\":\"sent\",\"note\":\"by parcel\"}"))
                        .getString("state"))
                .isEqualTo("sent");
        require(200, api.post(at + "/paperwork", "{\"reference\":\"R-7\",\"shippedOn\":\"2026-03-05\"}"));
        assertThat(require(200, api.get(at)).getString("shippedOn")).isEqualTo("2026-03-05");
        assertThat(require(200, api.get(at + "/changes")).getList("items.to")).containsExactly("opened", "sent");
        assertThat(require(200, api.get("/claims?state=sent&size=500&after=" + (claim.getLong("id") - 1)))
                        .getList("items.id", Long.class))
                .contains(claim.getLong("id"));
    }

    /** RFC 8259, section 8.2: JSON can name half of a surrogate pair, and no text of the database can hold it. */
    @Test
    void halfOfACharacterIsRefusedInEveryText() {
        String half = "x\\" + "ud83d";
        assertThat(refused("/spares", "\"serial\":\"" + half + "\",\"siteId\":" + place.siteId()))
                .isEqualTo("serial");
        assertThat(refused("/claims", "\"device\":" + place.deviceId() + ",\"fault\":\"" + half + "\""))
                .isEqualTo("fault");
        assertThat(refused(
                        "/devices/" + place.deviceId() + "/replacement",
                        "\"serial\":\"" + fresh + "\",\"old\":\"scrapped\",\"note\":\"" + half + "\""))
                .isEqualTo("note");
    }

    private String refused(String path, String fields) {
        return require(422, api.post(path, "{" + fields + "}")).getString("errors[0].field");
    }

    @Test
    void aSpareIsAddedMovedAndPutInAPlace() {
        JsonPath spare =
                require(201, api.post("/spares", "{\"serial\":\"" + fresh + "\",\"siteId\":" + place.siteId() + "}"));
        long id = spare.getLong("id");
        assertThat(require(422, api.post("/spares/" + id + "/move", "{\"siteId\":" + place.siteId() + "}"))
                        .getString("errors[0].reason"))
                .isEqualTo("it lies there already");
        JsonPath stay = require(
                200,
                api.post(
                        "/devices/" + place.deviceId() + "/replacement",
                        "{\"spare\":" + id + ",\"old\":\"spare\",\"siteId\":" + place.siteId() + "}"));
        assertThat(stay.getString("standing")).isEqualTo("announced");
        assertThat(stay.getString("serial")).isEqualTo(fresh);
        assertThat(require(
                                409,
                                api.post(
                                        "/devices/" + place.deviceId() + "/replacement",
                                        "{\"serial\":\"" + old + "-2\",\"old\":\"scrapped\"}"))
                        .getString("detail"))
                .contains("announced here already");
        require(404, api.get("/spares/" + id));
        assertThat(require(200, api.get("/devices/" + place.deviceId() + "/units"))
                        .getList("items.serial"))
                .containsExactlyInAnyOrder(old, fresh);
        long other = fixture.place("Orrin").customerId();
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), other));
        assertThat(require(200, narrowed.get("/spares")).getList("items")).isEmpty();
        require(404, narrowed.post("/spares/" + id + "/leave", "{\"why\":\"mine\"}"));
        assertThat(narrowed.post("/spares", "{\"serial\":\"x\",\"siteId\":" + place.siteId() + "}")
                        .statusCode())
                .isEqualTo(422);
    }
}
