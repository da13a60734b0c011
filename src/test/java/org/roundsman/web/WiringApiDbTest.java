package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.topology.TableFixture;
import org.roundsman.topology.WiringStore;

/** A gateway, a switch and an access point, as a program sees and corrects their wiring. */
@QuarkusTest
class WiringApiDbTest {

    private static final String GATEWAY = "02:00:5e:00:56:01";
    private static final String SWITCH = "02:00:5e:00:56:02";
    private static final String POINT = "02:00:5e:00:56:03";

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Devices devices;

    @Inject
    WiringStore store;

    @Inject
    Clock clock;

    private MarkedPlaces.Place place;
    private Api api;
    private long gateway;
    private long switchId;
    private long point;

    @BeforeEach
    void house() {
        place = places.place("Brackwater");
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
        gateway = device(DeviceKind.GATEWAY, "gw");
        switchId = device(DeviceKind.NETWORK_SWITCH, "sw-1");
        point = device(DeviceKind.ACCESS_POINT, "ap-loft");
        read(gateway, TableFixture.aSwitch(GATEWAY, 2).hears(1, SWITCH, "sw-1"), DeviceKind.GATEWAY);
        read(
                switchId,
                TableFixture.aSwitch(SWITCH, 8)
                        .hears(8, GATEWAY, "gw")
                        .hears(3, POINT, "ap-loft")
                        .power(3, 3, 5),
                DeviceKind.NETWORK_SWITCH);
        read(point, new TableFixture().mac(TableFixture.IF + "6.1", POINT), DeviceKind.ACCESS_POINT);
        store.workOut(place.siteId());
    }

    private long device(DeviceKind kind, String name) {
        DeviceDraft draft = new DeviceDraft(
                name, kind, "127.98.20." + (kind.ordinal() + 1), 16_098, place.credentialId(), null, "", 60, false);
        return devices.add(place.siteId(), draft).id;
    }

    private void read(long device, TableFixture tables, DeviceKind kind) {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS).minusSeconds(60);
        store.full(device, place.siteId(), tables.reading(kind, at));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    private Response put(Api with, String path, String json) {
        return with.request().contentType("application/json").body(json).put("/api/v1" + path);
    }

    private String port() {
        return "/devices/" + point + "/port";
    }

    private String on(long device, Integer number) {
        return "{\"place\":{\"deviceId\":" + device + ",\"port\":" + number + "},\"note\":\"traced by hand\"}";
    }

    /** RFC 3621: deliveringPower(3), and class4(5) of pethPsePortPowerClassifications; RFC 2863: up(1). */
    @Test
    void theTreeSaysWhatHangsWhereAndHowThatIsKnown() {
        JsonPath wiring = require(200, api.get("/sites/" + place.siteId() + "/wiring"));
        assertThat(wiring.getLong("tops[0].deviceId")).isEqualTo(gateway);
        assertThat(wiring.getString("tops[0].kind")).isEqualTo("gateway");
        String found = "tops[0].children[0].";
        assertThat(wiring.getLong(found + "deviceId")).isEqualTo(switchId);
        assertThat(wiring.getString(found + "read.outcome")).isEqualTo("answered");
        assertThat(wiring.getList(found + "ports")).hasSize(8);
        String third = found + "ports.find { it.number == 10003 }.";
        assertThat(wiring.getString(third + "state")).isEqualTo("up");
        assertThat(wiring.getString(third + "power.state")).isEqualTo("delivering");
        assertThat(wiring.getInt(third + "power.powerClass")).isEqualTo(4);
        assertThat(wiring.getString(third + "heard[0].systemName")).isEqualTo("ap-loft");
        String loft = found + "children[0].";
        assertThat(wiring.getLong(loft + "deviceId")).isEqualTo(point);
        assertThat(wiring.getInt(loft + "place.port")).isEqualTo(10003);
        assertThat(wiring.getString(loft + "place.how")).isEqualTo("lldp");
        assertThat(wiring.getList("unplaced.deviceId", Long.class)).containsExactly(place.deviceId());
    }

    @Test
    void theWayUpGoesFromTheDeviceToTheGateway() {
        JsonPath port = require(200, api.get(port()));
        assertThat(port.getList("path.deviceId", Long.class)).containsExactly(point, switchId, gateway);
        assertThat(port.getInt("path[0].port.number")).isEqualTo(10003);
        assertThat(port.getString("path[0].port.power.state")).isEqualTo("delivering");
        assertThat(port.getString("path[2].port")).isNull();
        assertThat(port.getString("said")).isNull();
    }

    @Test
    void whatAPersonSaysHoldsUntilItIsTakenBackAndIsNoted() {
        String before = api.get(port()).header("ETag");
        JsonPath set = require(200, put(api, port(), on(switchId, 10005)));
        assertThat(set.getInt("path[0].port.number")).isEqualTo(10005);
        assertThat(set.getString("path[0].place.how")).isEqualTo("person");
        assertThat(set.getInt("said.entered.place.port")).isEqualTo(10005);
        assertThat(set.getString("said.entered.note")).isEqualTo("traced by hand");
        require(
                412,
                api.request()
                        .header("If-Match", before)
                        .contentType("application/json")
                        .body(on(switchId, 10006))
                        .put("/api/v1" + port()));
        require(412, api.request().header("If-Match", before).delete("/api/v1" + port()));
        assertThat(api.delete(port()).statusCode()).isEqualTo(204);
        JsonPath after = require(200, api.get(port()));
        assertThat(after.getInt("path[0].port.number")).isEqualTo(10003);
        assertThat(after.getString("said")).isNull();
        assertThat(places.number("select count(*) from audit_entry where subject = 'device' and subject_id = " + point
                        + " and via = 'API' and action = 'changed' and customer_id = " + place.customerId()))
                .isEqualTo(2);
    }

    @Test
    void onlyTheDeviceAboveMayBeKnown() {
        JsonPath set = require(200, put(api, port(), on(gateway, null)));
        assertThat(set.getList("path.deviceId", Long.class)).containsExactly(point, gateway);
        assertThat(set.getString("path[0].port")).isNull();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{} | place | device of the same site",
                "{\"place\":{}} | place | device of the same site",
                "{\"place\":{\"deviceId\":999999999}} | place | device of the same site",
                "{\"place\":{\"deviceId\":SWITCH,\"port\":77}} | place | no such port",
                "{\"place\":{\"deviceId\":\"x\"}} | place.deviceId | another type of value",
                "{\"switch\":1} | switch | no such field"
            })
    void aPlaceThatCannotBeIsRefused(String json, String field, String reason) {
        JsonPath problem = require(422, put(api, port(), json.replace("SWITCH", String.valueOf(switchId))));
        assertThat(problem.getString("errors[0].field")).isEqualTo(field);
        assertThat(problem.getString("errors[0].reason")).contains(reason);
        assertThat(require(200, api.get(port())).getString("said")).isNull();
    }

    /** OWASP ASVS 5.0, 8.2.1 and 8.2.2. */
    @Test
    void viewersLookOnlyAndOthersFindNothing() {
        Api viewer = Api.with(place.viewerToken());
        require(200, viewer.get("/sites/" + place.siteId() + "/wiring"));
        require(200, viewer.get(port()));
        require(403, put(viewer, port(), on(switchId, 10005)));
        require(403, viewer.delete(port()));
        require(403, viewer.post("/sites/" + place.siteId() + "/wiring/read"));
        Api stranger = Api.with(places.place("Quillfeather").viewerToken());
        require(404, stranger.get("/sites/" + place.siteId() + "/wiring"));
        require(404, stranger.get(port()));
        long other = places.place("Quillfeather").customerId();
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), other));
        require(404, put(narrowed, port(), on(switchId, 10005)));
        require(404, narrowed.delete(port()));
        require(404, narrowed.post("/sites/" + place.siteId() + "/wiring/read"));
        assertThat(require(200, api.get(port())).getString("said")).isNull();
    }

    @Test
    void readingAgainNeedsTheScopeOfVisits() {
        String path = "/sites/" + place.siteId() + "/wiring/read";
        require(
                403,
                Api.with(places.token(Role.OWNER, null, Set.of(TokenScope.CHANGE), null))
                        .post(path));
        JsonPath wish = require(200, api.post(path));
        assertThat(wish.getInt("asked")).isNotNegative();
        assertThat(wish.getInt("asked") + wish.getInt("silent")).isLessThanOrEqualTo(4);
    }
}
