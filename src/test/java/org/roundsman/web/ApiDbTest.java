package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** The resources, as a program uses them. */
@QuarkusTest
class ApiDbTest {

    /** RFC 8288: a target in angle brackets with its relation. */
    private static final Pattern LINK = Pattern.compile("<(/api/v1[^>]+)>; rel=\"next\"");

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    private MarkedPlaces.Place place;
    private Api api;

    @BeforeEach
    void place() {
        place = places.place("Saltmarsh");
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
    }

    private static Response require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer;
    }

    @Test
    void aCustomerWithSiteAndDeviceIsMadeChangedAndRemoved() {
        Response customer = require(201, api.post("/customers", "{\"name\":\"Orrin " + place.marker() + "\"}"));
        String customerId = customer.jsonPath().getString("id");
        assertThat(customer.header("Location")).endsWith("/api/v1/customers/" + customerId);
        Response site = require(
                201,
                api.post(
                        "/customers/" + customerId + "/sites",
                        "{\"name\":\"Shop\",\"timeZone\":\"Europe/Berlin\",\"hours\":[{\"weekday\":1,\"opens\":\"08:30\","
                                + "\"closes\":\"18:00\"}],\"contacts\":[{\"name\":\"Ida\"}],\"uplinkDownKbit\":50000}"));
        String siteId = site.jsonPath().getString("id");
        assertThat(site.jsonPath().getString("entered.hours[0].opens")).startsWith("08:30");
        String device = "{\"name\":\"Till\",\"kind\":\"access-point\",\"host\":\"till.example\",\"credentialId\":%s}";
        Response keys = require(
                201,
                api.post(
                        "/credentials",
                        "{\"name\":\"shop keys\",\"version\":\"v2c\",\"community\":\"quay-7-bollard\",\"customerId\":"
                                + customerId + "}"));
        Response made = require(
                201,
                api.post(
                        "/sites/" + siteId + "/devices",
                        device.formatted(keys.jsonPath().getString("id"))));
        String path = "/devices/" + made.jsonPath().getString("now.id");
        assertThat(made.jsonPath().getInt("entered.port")).isEqualTo(161);
        assertThat(made.jsonPath().getString("now.condition")).isEqualTo("unwatched");
        Response changed = require(200, api.patch(path, "{\"place\":\"counter\",\"port\":1161}"));
        assertThat(changed.jsonPath().getString("entered.place")).isEqualTo("counter");
        assertThat(changed.jsonPath().getString("entered.host")).isEqualTo("till.example");
        require(409, api.delete("/credentials/" + keys.jsonPath().getString("id")));
        require(204, api.delete(path));
        require(404, api.get(path));
        require(204, api.delete("/credentials/" + keys.jsonPath().getString("id")));
    }

    @ParameterizedTest
    @CsvSource({
        "port, 0, from 1 to 65535",
        "port, 65536, from 1 to 65535",
        "host, '\"300.1.1.1\"', neither an IPv4",
        "intervalSeconds, 9, from 10 to 3600",
        "kind, '\"toaster\"', choose access point",
        "credentialId, 987654321, not there any more",
        "credentialId, null, choose the SNMP credentials",
        "name, null, must not be empty"
    })
    void aBadEntryIsNamedWithItsMend(String field, String value, String mend) {
        Response answer = require(422, api.patch("/devices/" + place.deviceId(), "{\"" + field + "\":" + value + "}"));
        assertThat(answer.jsonPath().getString("errors[0].field")).isEqualTo(field);
        assertThat(answer.jsonPath().getString("errors[0].reason")).contains(mend);
        assertThat(answer.jsonPath().getString("type")).isEqualTo("/api/problems/refused");
    }

    @ParameterizedTest
    @CsvSource({
        "{\"contacts\":[{}]}, contacts",
        "{\"hours\":[{\"weekday\":8}]}, hours",
        "{\"hours\":[{}]}, hours",
        "{\"timeZone\":null}, timeZone",
        "{\"country\":\"Germany\"}, country",
        "{\"uplinkUpKbit\":0}, uplinkUpKbit"
    })
    void aBadSiteIsNamedWithItsField(String json, String field) {
        Response answer = require(422, api.patch("/sites/" + place.siteId(), json));
        assertThat(answer.jsonPath().getList("errors.field")).containsExactly(field);
    }

    /** 3.5.1 the other way: JSON and no anti-forgery token, no cookie. */
    @Test
    void whatAPersonSaysOfANetworkIsKept() {
        String path = "/sites/" + place.siteId() + "/networks/" + place.networkId();
        assertThat(require(200, api.patch(path, "{\"purpose\":\"guest\"}"))
                        .jsonPath()
                        .getString("purpose"))
                .isEqualTo("guest");
        require(422, api.patch(path, "{\"purpose\":\"parrots\"}"));
        assertThat(api.get("/sites/" + place.siteId() + "/networks").jsonPath().getString("items[0].purpose"))
                .isEqualTo("guest");
    }

    /** RFC 9110, sections 8.8.3 and 13.1.1. */
    @Test
    void aChangeOnAnOldStateIsRefused() {
        String path = "/api/v1/customers/" + place.customerId();
        String before = require(200, api.request().get(path)).header("ETag");
        assertThat(before).matches("\"[0-9a-f]{16}\"");
        Response first = require(200, patch(path, before, "{\"note\":\"first\"}"));
        assertThat(first.header("ETag")).isNotEqualTo(before);
        Response late = require(412, patch(path, before, "{\"note\":\"late\"}"));
        assertThat(late.jsonPath().getString("detail")).contains(first.header("ETag"));
        require(412, api.request().header("If-Match", "\"0\"").delete("/api/v1/devices/" + place.deviceId()));
        require(200, patch(path, "\"0\", " + first.header("ETag"), "{\"note\":\"second\"}"));
        require(200, patch(path, "*", "{\"note\":\"third\"}"));
        assertThat(api.request().get(path).jsonPath().getString("note")).isEqualTo("third");
    }

    private Response patch(String path, String match, String json) {
        return api.request()
                .header("If-Match", match)
                .contentType(Api.MERGE)
                .body(json)
                .patch(path);
    }

    /** What two programs change at the same time in different fields is kept, both of it, every time. */
    @Test
    void changesAtTheSameTimeDoNotUndoEachOther() {
        String path = "/devices/" + place.deviceId();
        for (int i = 0; i < 20; i++) {
            String place = "{\"place\":\"mast " + i + "\"}";
            String port = "{\"port\":" + (2000 + i) + "}";
            CompletableFuture<Response> other = CompletableFuture.supplyAsync(() -> api.patch(path, place));
            require(200, api.patch(path, port));
            require(200, other.join());
            Response now = api.get(path);
            assertThat(now.jsonPath().getString("entered.place")).isEqualTo("mast " + i);
            assertThat(now.jsonPath().getInt("entered.port")).isEqualTo(2000 + i);
        }
    }

    @Test
    void everyItemComesOnceThoughOthersComeAndGo() {
        List<Long> made = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            made.add(fixture.device(place.siteId(), place.credentialId(), "AP " + i, "127.99.1." + i, 161));
        }
        List<Long> seen = new ArrayList<>();
        String next = "/api/v1/devices?site=" + place.siteId() + "&size=3";
        while (next != null) {
            Response piece = require(200, api.request().get(next));
            seen.addAll(piece.jsonPath().getList("items.id", Long.class));
            next = piece.jsonPath().getString("next");
            Matcher link = LINK.matcher(piece.headers().hasHeaderWithName("Link") ? piece.header("Link") : "");
            assertThat(link.find() ? link.group(1) : null).isEqualTo(next);
            if (seen.size() == 3) {
                require(204, api.delete("/devices/" + seen.get(0)));
                made.add(fixture.device(place.siteId(), place.credentialId(), "A late one", "127.99.2.1", 161));
            }
        }
        assertThat(seen).doesNotHaveDuplicates().isSorted().containsAll(made).contains(place.deviceId());
    }

    @Test
    void eventsComeNewestFirstAndInPieces() {
        for (int i = 0; i < 5; i++) {
            places.tell(
                    "insert into device_event (device_id, at, kind, title) values (" + place.deviceId()
                            + ", '2026-03-04T12:00:00Z', 'RESTARTED', ?)",
                    "Restart " + i);
        }
        String path = "/api/v1/devices/" + place.deviceId() + "/events?kind=restarted&size=2";
        List<String> titles = new ArrayList<>();
        for (String next = path; next != null; ) {
            Response piece = require(200, api.request().get(next));
            titles.addAll(piece.jsonPath().getList("items.title"));
            next = piece.jsonPath().getString("next");
        }
        assertThat(titles).containsExactly("Restart 4", "Restart 3", "Restart 2", "Restart 1", "Restart 0");
    }

    @Test
    void filtersNarrowTheLists() {
        String mine = "/devices?customer=" + place.customerId();
        assertThat(api.get(mine).jsonPath().getList("items")).hasSize(1);
        assertThat(api.get(mine + "&kind=gateway").jsonPath().getList("items")).isEmpty();
        assertThat(api.get(mine + "&condition=unwatched").jsonPath().getList("items"))
                .hasSize(1);
        assertThat(api.get("/devices?search=" + place.marker()).jsonPath().getList("items"))
                .hasSize(1);
        assertThat(api.get("/sites?search=" + place.marker()).jsonPath().getList("items"))
                .hasSize(1);
        assertThat(api.get("/customers?search=" + place.marker()).jsonPath().getList("items"))
                .hasSize(1);
        assertThat(api.get("/sites?customer=" + place.customerId()).jsonPath().getList("items"))
                .hasSize(1);
    }

    /** A change through the API says by whose token it was made, and from where. */
    @Test
    void changesAreNotedWithTheToken() {
        api.patch("/sites/" + place.siteId(), "{\"accessNote\":\"Ring twice\"}");
        Response changes = require(
                200,
                api.get("/changes?kind=site&subject=" + place.siteId() + "&customer=" + place.customerId()
                        + "&size=1"));
        assertThat(changes.jsonPath().getString("items[0].via")).isEqualTo("api");
        assertThat(changes.jsonPath().getString("items[0].token")).isEqualTo("round robin");
        assertThat(changes.jsonPath().getString("items[0].address")).isEqualTo("127.0.0.1");
        assertThat(changes.jsonPath().getString("items[0].fields[0].new")).isEqualTo("Ring twice");
        String next = changes.jsonPath().getString("next");
        Response older = require(200, api.request().get(next));
        OffsetDateTime at = OffsetDateTime.parse(changes.jsonPath().getString("items[0].at")); // RFC 3339
        assertThat(OffsetDateTime.parse(older.jsonPath().getString("items[0].at")))
                .isBeforeOrEqualTo(at);
        assertThat(older.jsonPath().getLong("items[0].id"))
                .isLessThan(changes.jsonPath().getLong("items[0].id"));
    }

    @Test
    void credentialsChangeTheirTurn() {
        String second = require(
                        201,
                        api.post(
                                "/credentials",
                                "{\"name\":\"second\",\"version\":\"v1\",\"community\":\"quay-9-bollard\",\"customerId\":"
                                        + place.customerId() + "}"))
                .jsonPath()
                .getString("id");
        assertThat(api.get("/credentials/" + second).jsonPath().getInt("turn")).isEqualTo(2);
        require(200, api.post("/credentials/" + second + "/earlier"));
        assertThat(api.get("/credentials/" + second).jsonPath().getInt("turn")).isEqualTo(1);
        require(200, api.post("/credentials/" + second + "/later"));
        assertThat(api.get("/credentials/" + place.credentialId()).jsonPath().getInt("turn"))
                .isEqualTo(1);
    }

    @Test
    void aNarrowedTokenChangesNothingOfEverybodys() {
        Api narrow = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), place.customerId()));
        require(403, narrow.post("/customers", "{\"name\":\"Mine\"}"));
        String shared =
                "{\"name\":\"shared " + place.marker() + "\",\"version\":\"v1\",\"community\":\"quay-11-bollard\"}";
        require(403, narrow.post("/credentials", shared));
        String id = require(201, api.post("/credentials", shared)).jsonPath().getString("id");
        require(200, narrow.get("/credentials/" + id));
        require(403, narrow.patch("/credentials/" + id, "{\"name\":\"taken over\"}"));
        require(403, narrow.delete("/credentials/" + id));
        long other = places.place("Brackwater").customerId();
        require(422, narrow.patch("/credentials/" + place.credentialId(), "{\"customerId\":" + other + "}"));
    }
}
