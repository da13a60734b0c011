package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Alarms as programs see them and act on them. */
@QuarkusTest
class AlarmsApiDbTest {

    private static final Instant NOW = Instant.now().truncatedTo(ChronoUnit.SECONDS);

    @Inject
    FleetFixture fleet;

    @Inject
    MarkedPlaces places;

    @Inject
    AlarmDesk desk;

    private FleetFixture.Place place;
    private AlarmKey key;
    private Api api;

    @BeforeEach
    void anAlarm() {
        place = fleet.place("Saltmarsh");
        key = AlarmKey.of(AlarmType.RADIO_OFF, Resource.radio(place.deviceId(), 2));
        api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.allOf(TokenScope.class), null));
        desk.accept(List.of(raise(0)));
    }

    private Signal raise(int second) {
        Instant at = NOW.plusSeconds(second);
        return new Signal.Raise(key, Severity.MAJOR, at, at, "Radio 2 is off.");
    }

    private JsonPath one() {
        return api.get("/alarms?device=" + place.deviceId() + "&state=active").jsonPath();
    }

    private long id() {
        return one().getLong("items[0].id");
    }

    @Test
    void anAlarmTellsWhatIsKnown() {
        JsonPath alarm = api.get("/alarms/" + id()).jsonPath();
        assertThat(alarm.getString("type")).isEqualTo("radio-off");
        assertThat(alarm.getString("resource.kind")).isEqualTo("device");
        assertThat(alarm.getLong("resource.id")).isEqualTo(place.deviceId());
        assertThat(alarm.getString("resource.name")).isEqualTo("Pier AP of " + place.customer() + ", radio 2");
        assertThat(alarm.getString("severity")).isEqualTo("major");
        assertThat(alarm.getBoolean("cleared")).isFalse();
        assertThat(alarm.getString("raised")).isEqualTo(NOW.toString());
        assertThat(alarm.getString("operator.state")).isEqualTo("none");
        assertThat(alarm.getString("cause.kind")).isEqualTo("itself");
        assertThat((Object) alarm.get("impact.guest")).isNull();
        assertThat(alarm.getString("customer")).isEqualTo(place.customer());
    }

    @Test
    void listsComeInPiecesTheLastFirst() {
        IntStream.rangeClosed(1, 4)
                .forEach(n -> desk.accept(
                        List.of(new Signal.Clear(key, NOW.plusSeconds(20 * n - 10), "On again."), raise(20 * n))));
        String path = "/alarms?device=" + place.deviceId() + "&size=2";
        JsonPath first = api.get(path).jsonPath();
        assertThat(first.getList("items.raised"))
                .containsExactly(
                        NOW.plusSeconds(80).toString(), NOW.plusSeconds(60).toString());
        JsonPath second = api.request().get(first.getString("next")).jsonPath();
        JsonPath third = api.request().get(second.getString("next")).jsonPath();
        assertThat(third.getList("items.raised")).containsExactly(NOW.toString());
        assertThat((Object) third.get("next")).isNull();
        JsonPath changes = api.get("/alarms/" + id() + "/changes?size=3").jsonPath();
        assertThat(changes.getList("items.severity")).containsExactly("major", "cleared", "major");
        assertThat(api.request().get(changes.getString("next")).jsonPath().getList("items.severity"))
                .containsExactly("cleared", "major", "cleared");
        assertThat(api.get("/alarms/" + id() + "/episodes").jsonPath().getList("items.summary"))
                .containsExactly("", "On again.", "On again.", "On again.", "On again.");
    }

    @Test
    void whatPeopleDoIsKeptAndAudited() {
        long id = id();
        String until = NOW.plusSeconds(86_400).toString();
        assertThat(api.post("/alarms/" + id + "/take").jsonPath().getString("operator.state"))
                .isEqualTo("ack");
        api.post("/alarms/" + id + "/note", "{\"text\": \"Called the pier.\"}");
        assertThat(api.post("/alarms/" + id + "/shelve", "{\"until\": \"" + until + "\", \"reason\": \"storm\"}")
                        .jsonPath()
                        .getString("operator.until"))
                .isEqualTo(until);
        assertThat(api.post("/alarms/" + id + "/close", "{\"text\": \"\"}").statusCode())
                .isEqualTo(422);
        api.post("/alarms/" + id + "/unshelve");
        api.post("/alarms/" + id + "/acknowledge", "{\"text\": \"\"}");
        api.post("/alarms/" + id + "/release");
        JsonPath closed =
                api.post("/alarms/" + id + "/close", "{\"text\": \"known\"}").jsonPath();
        assertThat(closed.getString("operator.state")).isEqualTo("closed");
        assertThat(closed.getBoolean("cleared")).isFalse();
        assertThat(api.get("/alarms/" + id + "/acts").jsonPath().getList("items.act"))
                .containsExactly("close", "release", "ack", "unshelve", "shelve", "note", "take");
        assertThat(places.number("select count(*) from audit_entry where subject = 'alarm' and via = 'API'"
                        + " and customer_id = " + place.customerId()))
                .isEqualTo(7);
    }

    @Test
    void whatMakesNoSenseIsRefusedByItsField() {
        long id = id();
        assertThat(api.post("/alarms/" + id + "/note", "{\"text\": \" \"}")
                        .jsonPath()
                        .getString("errors[0].field"))
                .isEqualTo("text");
        assertThat(api.post("/alarms/" + id + "/shelve", "{\"reason\": \"storm\"}")
                        .jsonPath()
                        .getString("errors[0].field"))
                .isEqualTo("until");
        assertThat(api.get("/alarms?severity=awful").jsonPath().getString("errors[0].field"))
                .isEqualTo("severity");
        assertThat(api.get("/alarms?type=awful").statusCode()).isEqualTo(422);
        assertThat(api.get("/alarms?from=yesterday").statusCode()).isEqualTo(422);
        assertThat(api.get("/alarms/" + id + "/clear").statusCode()).isEqualTo(404);
    }

    @Test
    void accountManagersSeeAndDoNotActAndTokensNeedTheScope() {
        long id = id();
        Api manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, EnumSet.allOf(TokenScope.class), null));
        assertThat(manager.get("/alarms/" + id).statusCode()).isEqualTo(200);
        assertThat(manager.post("/alarms/" + id + "/take").statusCode()).isEqualTo(403);
        Api reader = Api.with(places.token(Role.OWNER, null, Set.of(TokenScope.READ), null));
        assertThat(reader.post("/alarms/" + id + "/take").statusCode()).isEqualTo(403);
        long other = fleet.place("Quillfeather").customerId();
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), other));
        assertThat(narrowed.post("/alarms/" + id + "/take").statusCode()).isEqualTo(404);
        assertThat(narrowed.get("/alarms?device=" + place.deviceId()).jsonPath().getList("items"))
                .isEmpty();
    }

    @Test
    void theInventoryHasEveryType() {
        assertThat(api.get("/alarm-types").jsonPath().getList("items.id"))
                .hasSize(AlarmType.values().length)
                .contains("device-silent", "uplink-lost");
    }
}
