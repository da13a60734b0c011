package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;

/** Planned work, as a program plans it. */
@QuarkusTest
class PlannedWorkApiDbTest {

    private static final String AT = "/planned-work";

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private SignedIn technician;
    private Api api;

    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        technician = places.somebody(Role.TECHNICIAN, null);
        api = Api.with(places.token(technician, "planner", EnumSet.allOf(TokenScope.class), null));
    }

    private static Response require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer;
    }

    private String body(String what) {
        return "{\"site\":" + place.siteId() + ",\"title\":\"New switch\"," + what + "}";
    }

    private String inHours(int hours) {
        return clock.instant().plus(Duration.ofHours(hours)).toString();
    }

    private long noted(String action) {
        return places.number("select count(*) from audit_entry where via = 'API' and token = 'planner' and actor = '"
                + technician.name() + "' and action = '" + action + "' and subject = 'planned work' and customer_id = "
                + place.customerId());
    }

    @Test
    void workIsStartedListedEndedAndNoted() {
        Response made = require(201, api.post(AT, body("\"once\":{\"to\":\"" + inHours(2) + "\"}")));
        JsonPath work = made.jsonPath();
        assertThat(made.header("Location")).endsWith("/api/v1/planned-work/" + work.getLong("id"));
        assertThat(work.getString("state")).isEqualTo("running");
        assertThat(work.getString("madeBy")).isEqualTo(technician.name());
        assertThat(work.getLong("siteId")).isEqualTo(place.siteId());
        String one = AT + "/" + work.getLong("id");
        assertThat(ids(AT + "?open=true&site=" + place.siteId())).containsExactly(work.getLong("id"));
        assertThat(require(200, api.post(one + "/end")).jsonPath().getString("state"))
                .isEqualTo("over");
        assertThat(require(409, api.post(one + "/end")).jsonPath().getString("detail"))
                .isEqualTo("this work is not going on");
        require(409, api.post(one + "/cancel"));
        assertThat(ids(AT + "?open=true&site=" + place.siteId())).isEmpty();
        assertThat(ids(AT + "?site=" + place.siteId())).containsExactly(work.getLong("id"));
        assertThat(noted("added")).isEqualTo(1);
        assertThat(noted("ended")).isEqualTo(1);
    }

    private List<Long> ids(String path) {
        return require(200, api.get(path)).jsonPath().getList("items.id", Long.class);
    }

    @Test
    void aRepetitionComesBackAsItWasGivenAndIsCancelled() {
        LocalDate first = LocalDate.now(clock).plusDays(1);
        String plan = "{\"repeats\":\"month-weekday\",\"weekdays\":[7],\"which\":1,\"start\":\"02:30\",\"minutes\":90,"
                + "\"firstDay\":\"" + first + "\",\"lastDay\":\"" + first.plusYears(1) + "\"}";
        JsonPath work =
                require(201, api.post(AT, body("\"repeating\":" + plan))).jsonPath();
        assertThat(work.getString("state")).isEqualTo("repeating");
        assertThat(work.getString("repeating.start")).startsWith("02:30");
        assertThat(work.getList("repeating.weekdays", Integer.class)).containsExactly(7);
        Instant next = Instant.parse(work.getString("next.from"));
        var local = next.atZone(java.time.ZoneId.of("Europe/Berlin"));
        assertThat(local.getDayOfWeek().getValue()).isEqualTo(7);
        assertThat(local.getDayOfMonth()).isLessThanOrEqualTo(7);
        JsonPath cancelled = require(200, api.post(AT + "/" + work.getLong("id") + "/cancel"))
                .jsonPath();
        assertThat(cancelled.getString("state")).isEqualTo("cancelled");
        assertThat(cancelled.getString("stoppedAt")).isNotEmpty();
        assertThat(noted("cancelled")).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"once\":{} | once.to",
                "\"once\":{\"from\":\"2030-01-01T00:00:00Z\",\"to\":\"2029-01-01T00:00:00Z\"} | once.to",
                "\"once\":{\"to\":\"2999-01-01T00:00:00Z\"} | to",
                "\"device\":3,\"once\":{} | site",
                "\"reason\":\"\" | once",
                "\"repeating\":{} | repeats,start,firstDay",
                "\"repeating\":{\"repeats\":\"weekly\",\"weekdays\":[8]} | repeating.weekdays",
                "\"repeating\":{\"repeats\":\"weekly\",\"weekdays\":[],\"start\":\"22:00\",\"minutes\":60,"
                        + "\"firstDay\":\"2020-01-01\"} | weekdays",
                "\"repeating\":{\"repeats\":\"month-weekday\",\"which\":9,\"start\":\"22:00\",\"minutes\":1,"
                        + "\"firstDay\":\"+999999999-12-31\",\"skipped\":[\"2027-01-01\"]}"
                        + " | which,weekday,length,firstDay",
                "\"colour\":1 | colour"
            })
    void aBadPlanIsNamedWithItsFields(String what, String fields) {
        assertThat(String.join(
                        ",", require(422, api.post(AT, body(what))).jsonPath().getList("errors.field", String.class)))
                .isEqualTo(fields);
    }

    @Test
    void othersWorkIsNotThereAndRolesAndScopesAreHeldBack() {
        long mine = require(201, api.post(AT, body("\"once\":{\"to\":\"" + inHours(2) + "\"}")))
                .jsonPath()
                .getLong("id");
        MarkedPlaces.Place other = places.place("Brackwater");
        Api narrowed =
                Api.with(places.token(technician, "one only", EnumSet.allOf(TokenScope.class), other.customerId()));
        require(404, narrowed.get(AT + "/" + mine));
        require(404, narrowed.post(AT + "/" + mine + "/end"));
        require(404, narrowed.post(AT + "/" + mine + "/cancel"));
        Response refused = require(422, narrowed.post(AT, body("\"once\":{\"to\":\"" + inHours(2) + "\"}")));
        assertThat(refused.jsonPath().getList("errors.field")).containsExactly("site");
        assertThat(require(200, Api.with(other.viewerToken()).get(AT))
                        .jsonPath()
                        .getList("items.id", Long.class))
                .containsExactly(other.workId());
        Api manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, EnumSet.allOf(TokenScope.class), null));
        require(200, manager.get(AT + "/" + mine));
        require(403, manager.post(AT + "/" + mine + "/end"));
        Api reading = Api.with(places.token(technician, "reader", EnumSet.of(TokenScope.READ), null));
        require(403, reading.post(AT + "/" + mine + "/end"));
    }

    @Test
    void longListsComeInPieces() {
        for (int i = 0; i < 3; i++) {
            require(201, api.post(AT, body("\"once\":{\"to\":\"" + inHours(2 + i) + "\"}")));
        }
        JsonPath first = require(200, api.get(AT + "?size=2&open=true&site=" + place.siteId()))
                .jsonPath();
        assertThat(first.getList("items")).hasSize(2);
        JsonPath rest = require(200, api.request().get(first.getString("next"))).jsonPath();
        assertThat(rest.getList("items")).hasSize(1);
        assertThat(rest.getString("next")).isNull();
    }
}
