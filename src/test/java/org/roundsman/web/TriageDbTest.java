package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.roundsman.people.Role;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;

/** The triage page: what stands where, who sees it, and what acts do. */
@QuarkusTest
class TriageDbTest {

    @Inject
    AlarmHouse houses;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Timeline timeline;

    @Inject
    Clock clock;

    private AlarmHouse.House house;
    private long uplink;
    private long port;
    private long busy;

    @BeforeEach
    void aHouseWithAlarms() {
        houses.clearAll();
        house = houses.house("Brackwater");
        AlarmHouse.House other = houses.house("Pebblegate");
        uplink = houses.uplinkLost(house);
        port = houses.portOff(other, 1, 12);
        busy = houses.busy(other, 0);
    }

    private static String text(Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.asString().replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    private String act(Browser who, long alarm, String what, Map<String, String> fields) {
        Response answer = who.post("/password", "/triage/alarms/" + alarm + "/" + what, fields);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(303);
        assertThat(answer.header("Location")).endsWith("/triage/alarms/" + alarm);
        return text(who.get("/triage/alarms/" + alarm));
    }

    @Test
    void causesStandInTheirOrderAndWhatTheyExplainDoesNotStandBesideThem() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String page = technician.get("/triage").asString();
        assertThat(List.of(
                        page.indexOf("id=\"open-" + uplink + "\""),
                        page.indexOf("id=\"open-" + port + "\""),
                        page.indexOf("id=\"open-" + busy + "\"")))
                .doesNotContain(-1)
                .isSorted();
        String text = text(technician.get("/triage"));
        assertThat(text)
                .contains("3 causes")
                .contains("Uplink or gateway lost")
                .containsPattern("for 12 min, since [0-9A-Z][^()]{4,20} site time")
                .contains("about 40 people would be online now: 12 staff, 28 guests; 3 access points")
                .contains("(in service hours)")
                .contains("nobody has it yet")
                .contains("explains 5 alarms")
                .contains("The gateway gw last answered at 10:41:12.")
                .contains("above the next: more people suffer now");
        String list = page.substring(page.indexOf("<ol class=\"lines\">"), page.indexOf("</ol>"));
        assertThat(list.split("<article").length - 1).isEqualTo(3);
    }

    @Test
    void theAlarmBesideTheListSaysEverythingThatIsKnown() {
        timeline.add(List.of(
                DeviceEvent.change(
                        house.gateway(),
                        clock.instant().minus(Duration.ofMinutes(30)),
                        EventKind.FACT_CHANGED,
                        "Firmware changed",
                        "4.1",
                        "4.2"),
                DeviceEvent.change(
                        house.gateway(),
                        clock.instant().minus(Duration.ofMinutes(100)),
                        EventKind.FACT_CHANGED,
                        "Long before",
                        "",
                        "")));
        String text = text(fixture.browser(Role.TECHNICIAN, null).get("/triage/alarms/" + uplink));
        assertThat(text)
                .contains("3 of 3 access points are silent since.")
                .contains("Other sites answer.")
                .contains("Explains 5 alarms")
                .contains("Firmware changed: 4.1 → 4.2")
                .contains("Evidence in site time", "What changed in the hour before in site time")
                .doesNotContain("Long before")
                .contains("Poll gw now")
                .contains("became critical")
                .contains("Call the site: is there power?");
    }

    @Test
    void theHourBeforeCountsThoseAboveTheDevice() {
        AlarmHouse.House third = houses.house("Quillfeather");
        long alarm = houses.portOff(third, 2, 1);
        timeline.add(List.of(
                event(third.switchId(), "Its switch restarted"),
                event(third.points().get(0), "A neighbour restarted")));
        String text = text(fixture.browser(Role.TECHNICIAN, null).get("/triage/alarms/" + alarm));
        assertThat(text).contains("sw-1 : Its switch restarted").doesNotContain("A neighbour restarted");
    }

    private DeviceEvent event(long device, String title) {
        return new DeviceEvent(
                device, clock.instant().minus(Duration.ofMinutes(8)), EventKind.RESTARTED, title, "", "", "");
    }

    @Test
    void actsAreKeptShownAndAudited() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(act(technician, port, "take", Map.of()))
                .contains("you have it")
                .contains("Give it back");
        assertThat(text(fixture.browser(Role.OWNER, null).get("/triage/alarms/" + port)))
                .contains(" has it")
                .contains("Take it");
        assertThat(act(technician, port, "note", Map.of("text", "Called Ottoline: the rack is warm")))
                .contains("Called Ottoline: the rack is warm");
        assertThat(act(technician, port, "release", Map.of())).contains("nobody has it yet");
        assertThat(act(technician, port, "acknowledge", Map.of())).contains("acknowledged by");
        assertThat(act(technician, port, "shelve", Map.of("length", "PT4H", "reason", "Part is ordered")))
                .contains("shelved until")
                .contains("Part is ordered")
                .contains("Take off the shelf");
        assertThat(text(technician.get("/triage"))).contains("Shelved (1)").contains("2 causes");
        assertThat(act(technician, port, "unshelve", Map.of()))
                .doesNotContain("Take off the shelf")
                .contains("Shelve it");
        act(technician, port, "close", Map.of("text", "Replaced the cable"));
        assertThat(text(technician.get("/triage"))).contains("2 causes").doesNotContain("Shelved (");
        assertThat(places.number("select count(*) from audit_entry where subject = 'alarm' and subject_id = " + port
                        + " and via = 'PAGE'"))
                .isEqualTo(7);
    }

    @Test
    void whatCannotBeDoneIsSaidInTheForm() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String at = "/triage/alarms/" + port;
        Response silent = technician.post("/password", at + "/note", Map.of("text", " "));
        assertThat(silent.statusCode()).isEqualTo(422);
        assertThat(silent.asString()).contains("write what is to be noted");
        Response noReason = technician.post("/password", at + "/shelve", Map.of("length", "PT1H", "reason", ""));
        assertThat(noReason.statusCode()).isEqualTo(422);
        assertThat(noReason.asString()).contains("say why it is put aside");
        Response noTime = technician.post(
                "/password", at + "/shelve", Map.of("length", "", "until", "", "reason", "Waiting for a part"));
        assertThat(noTime.statusCode()).isEqualTo(422);
        assertThat(noTime.asString()).contains("choose a length").contains("value=\"Waiting for a part\"");
        Response past = technician.post(
                "/password", at + "/shelve", Map.of("length", "", "until", "2020-01-01T10:00", "reason", "x"));
        assertThat(past.statusCode()).isEqualTo(422);
        assertThat(past.asString()).contains("must lie in the future");
    }

    @Test
    void theScriptIsToldThatSomethingChangedAndNothingNewIsAnEmptyAnswer() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String token = technician.token("/password");
        Response taken = technician
                .request()
                .header("HX-Request", "true")
                .contentType("application/x-www-form-urlencoded")
                .formParam("anti-forgery", token)
                .post("/triage/alarms/" + port + "/take");
        assertThat(taken.statusCode()).isEqualTo(204);
        assertThat(taken.header("HX-Trigger")).isEqualTo("triage-changed");
        assertThat(technician.get("/triage/list?chosen=x&seen=0").statusCode()).isEqualTo(200);
        quiet(technician, "/triage/list");
        quiet(technician, "/triage/alarms/" + port + "/now");
    }

    /** A minute may begin between the two requests, so that "for 5 min" is news: then once more. */
    private static void quiet(Browser who, String path) {
        Awaitility.await().until(() -> {
            String shown = who.get(path).asString();
            String stamp = shown.replaceAll("(?s).*seen=([0-9a-f]+)\".*", "$1");
            return who.get(path + "?seen=" + stamp).statusCode() == 204;
        });
    }

    @Test
    void whatIsOverMovesToTheFoldAndTheEmptyListSaysSomethingUseful() {
        houses.over(port);
        Browser viewerElsewhere =
                fixture.browser(Role.VIEWER, fixture.place("Saltmarsh").customerId());
        assertThat(text(viewerElsewhere.get("/triage")))
                .contains("Nothing is wrong.")
                .contains("no round has been made yet.");
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(text(technician.get("/triage"))).contains("2 causes").contains("lasted ");
        assertThat(text(technician.get("/triage/alarms/" + port)))
                .contains("cleared")
                .contains("Answers again.")
                .contains("about 12 people would have been online")
                .doesNotContain("Next step");
        Response late = technician.post("/password", "/triage/alarms/" + port + "/take", Map.of());
        assertThat(late.statusCode()).isEqualTo(422);
        assertThat(late.asString()).contains("Not done: it is cleared: the fault is gone");
    }

    @Test
    void aViewerReadsOwnCausesWithoutNamesNotesAndActs() {
        String name = fixture.person(Role.TECHNICIAN, null);
        Browser technician = Browser.of(name, FleetFixture.PASSWORD);
        act(technician, uplink, "take", Map.of());
        act(technician, uplink, "note", Map.of("text", "They have not paid"));
        Browser viewer = fixture.browser(Role.VIEWER, house.customerId());
        assertThat(text(viewer.get("/triage"))).contains("1 cause").contains("somebody is on it");
        String page = viewer.get("/triage/alarms/" + uplink).asString();
        assertThat(page)
                .contains("Uplink or gateway lost")
                .doesNotContain("They have not paid")
                .doesNotContain("History and notes")
                .doesNotContain(name)
                .doesNotContain("<textarea")
                .doesNotContain("/triage/visit/")
                .doesNotContain("/poll");
        assertThat(viewer.get("/triage/alarms/" + port).statusCode()).isEqualTo(404);
        assertThat(viewer.get("/triage/alarms/" + port + "/now").statusCode()).isEqualTo(404);
        assertThat(viewer.get("/triage/visit/" + uplink).statusCode()).isEqualTo(403);
        for (String act : List.of("acknowledge", "take", "release", "note", "shelve", "unshelve", "close")) {
            assertThat(viewer.post("/password", "/triage/alarms/" + uplink + "/" + act, Map.of())
                            .statusCode())
                    .as(act)
                    .isEqualTo(403);
        }
    }

    @Test
    void anAccountManagerReadsEverythingAndHandlesNothing() {
        Browser manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
        String page = manager.get("/triage/alarms/" + uplink).asString();
        assertThat(page)
                .contains("History and notes")
                .contains("/triage/visit/")
                .doesNotContain("<textarea");
        assertThat(manager.post("/password", "/triage/alarms/" + uplink + "/take", Map.of())
                        .statusCode())
                .isEqualTo(403);
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void triageIsTheFirstAreaForThoseWhoDealWithAlarms(Role role) {
        Long customer = role == Role.VIEWER ? house.customerId() : null;
        String page = fixture.browser(role, customer).get("/triage").asString();
        boolean first = page.indexOf("<li><a href=\"/triage\"") < page.indexOf("<li><a href=\"/\"");
        assertThat(first).isEqualTo(role == Role.TECHNICIAN || role == Role.OWNER);
    }
}
