package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.planned.PlanDraft;
import org.roundsman.planned.Planning;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Timing;

/** Firmware as people and programs use it, in a real browser and over HTTP. */
@QuarkusTest
class FirmwarePageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Planning planning;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private long line;
    private long model;
    private long second;

    @BeforeEach
    void aSiteWithALine() {
        place = fixture.place("Saltmarsh");
        String word = place.customer().replace("Saltmarsh ", "");
        line = places.number("insert into firmware_line (name) values ('Tamarack " + word + "') returning id");
        model = places.number("insert into model (maker, name, kind, firmware_line_id) values ('Tamarack Radio', 'TR-"
                + word + "', 'ACCESS_POINT', " + line + ") returning id");
        second = fixture.device(
                place.siteId(), place.credentialId(), "Mast AP of " + place.customer(), "127.99.0.2", 16_099);
        runs(place.deviceId(), "6.1.0");
        runs(second, "6.4.1");
    }

    private void runs(long device, String version) {
        places.tell("update device set model_id = " + model + " where id = " + device);
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (" + device
                        + ", 'FIRMWARE', ?, now() - interval '40 days')",
                version);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void press(Page page, String name) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(name).setExact(true))
                .first()
                .click();
    }

    private static String main(Page page) {
        return page.locator("main").innerText();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theOwnerDecidesAndTheStatusFollows(int width) {
        String here = address + "firmware/policy/" + line;
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.OWNER, null), FleetFixture.PASSWORD);
            page.navigate(address + "firmware/policy");
            assertThat(main(page)).contains("You decide it").contains("nothing");
            screen.check("firmware-lines");
            page.navigate(here);
            decide(page, "6.4.2", "RECOMMENDED", "");
            page.fill("#version", "6.1.0");
            page.selectOption("#stand", "WITHDRAWN");
            press(page, "Save the decision");
            assertThat(main(page)).contains("say why it was withdrawn");
            screen.check("firmware-line-refused");
            decide(page, "6.1.0", "WITHDRAWN", "it restarts under load");
            decide(page, "6.5.0", "PILOT", "");
            page.fill("#minimum-version", "6.0.0");
            page.fill("#identifier", "TR-ADV-7");
            press(page, "Set the minimum");
            assertThat(main(page)).contains("6.0.0 for TR-ADV-7");
            page.selectOption("#site", String.valueOf(place.siteId()));
            press(page, "Add the pilot site");
            page.selectOption("#customer", String.valueOf(place.customerId()));
            page.fill("#exception-version", "6.1.0");
            page.fill("#exception-reason", "the till is certified with it");
            page.fill("#lastDay", LocalDate.now(clock).plusDays(20).toString());
            press(page, "Add the exception");
            assertThat(main(page)).contains("the till is certified with it");
            triedAndJudged(screen, here);
            screen.complaints("422");
        }
        assertThat(places.number(
                        "select count(*) from audit_entry where subject like 'firmware %' and (subject_name like '%"
                                + place.customer().replace("Saltmarsh ", "") + "%')"))
                .isGreaterThanOrEqualTo(7);
    }

    private void triedAndJudged(Screen screen, String here) {
        Page page = screen.page();
        page.fill("#tried", "6.4.2-rc1");
        press(page, "Try");
        assertThat(main(page))
                .contains("pre-release word")
                .contains("6.4.2-rc1 is older than 6.4.2 (recommended)")
                .contains("6.4.2-rc1 is newer than 6.1.0 (withdrawn)");
        screen.check("firmware-line");
        page.navigate(address + "firmware?customer=" + place.customerId());
        assertThat(main(page)).contains("excepted").contains("behind").contains("mixed site");
        screen.check("firmware-runs");
        page.navigate(here);
        page.locator("button:has-text('Take back')").click();
        page.navigate(address + "firmware/devices?status=withdrawn&customer=" + place.customerId());
        assertThat(main(page)).contains("6.1.0 was withdrawn").doesNotContain("Mast AP");
        screen.check("firmware-devices");
    }

    private static void decide(Page page, String version, String stand, String reason) {
        page.fill("#version", version);
        page.selectOption("#stand", stand);
        page.fill("#reason", reason);
        page.fill("#releasedOn", "2026-01-15");
        press(page, "Save the decision");
        assertThat(main(page)).contains(version).doesNotContain("Nothing was saved");
    }

    private void policy() {
        places.tell("insert into firmware_release (line_id, version, stand, reason, withdrawn_on, released_on) values ("
                + line + ", '6.4.2', 'RECOMMENDED', '', null, date '2026-01-15'), (" + line
                + ", '6.1.0', 'WITHDRAWN', 'it restarts under load', date '2026-02-01', null)");
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theWorkListFitsIntoPlannedWorkAndChangesAreShown(int width) {
        policy();
        places.tell("insert into firmware_change (device_id, event_id, at, old_version, new_version, restarted_at,"
                + " compared_at, settled) values (" + second + ", " + -second
                + ", now() - interval '10 days', '6.3.1', '6.4.1', now() - interval '10 days', now(), true)");
        places.tell("insert into firmware_change_figure (change_id, figure, before, after, quarters) select id,"
                + " 'RETRIES', 4, 9, 640 from firmware_change where device_id = " + second);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "firmware/work");
            Page.GetByRoleOptions mine = new Page.GetByRoleOptions();
            assertThat(page.getByRole(AriaRole.ROW, mine.setName(place.customer()))
                            .innerText())
                    .contains("withdrawn")
                    .contains("2 of 2")
                    .contains("no window planned")
                    .contains("Plan work");
            var begin = clock.instant().plus(Duration.ofHours(2));
            planning.add(
                    CustomerScope.everyone(),
                    new PlanDraft(
                            new PlanDraft.Where(Reach.SITE, place.siteId()),
                            "Updates at night",
                            "",
                            new Timing.Once(new Stretch(begin, begin.plus(Duration.ofMinutes(20))))));
            page.navigate(address + "firmware/work");
            assertThat(page.getByRole(AriaRole.ROW, mine).innerText())
                    .contains("1 (Updates at night)")
                    .contains("no window planned for 1 more");
            screen.check("firmware-work");
            changesAreLinkedFromTheDevice(screen);
            screen.complaints();
        }
    }

    private void changesAreLinkedFromTheDevice(Screen screen) {
        Page page = screen.page();
        page.navigate(address + "firmware/upgrades?device=" + second);
        assertThat(main(page)).contains("6.3.1 → 6.4.1").contains("higher").contains("4\u00a0% before, 9\u00a0% after");
        screen.check("firmware-upgrades");
        page.navigate(address + "firmware/policy/" + line);
        assertThat(main(page)).contains("it restarts under load").doesNotContain("Save the decision");
        screen.check("firmware-line-read");
        page.navigate(address + "devices/" + second);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Changes of its firmware"))
                .click();
        assertThat(page.url()).endsWith("/firmware/upgrades?device=" + second);
    }

    @Test
    void theLinkOfNoVersionLeadsToExactlyThoseDevices() {
        places.tell("delete from device_fact where fact = 'FIRMWARE' and device_id = " + second);
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String link = "/firmware/devices?customer=" + place.customerId() + "&model=" + model + "&version=-none";
        assertThat(technician.get("/firmware?customer=" + place.customerId()).asString())
                .contains("no version read")
                .contains(link.replace("&", "&amp;"));
        assertThat(technician.get(link).asString())
                .contains("1 found")
                .contains("Mast AP of " + place.customer())
                .doesNotContain("Pier AP of " + place.customer());
    }

    @Test
    void theTablesComeAsCsv() {
        policy();
        Browser manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
        Response devices = manager.get("/firmware/devices.csv?customer=" + place.customerId());
        assertThat(devices.header("Content-Disposition")).contains("firmware.csv");
        assertThat(devices.asString().split("\r\n")).hasSize(3);
        assertThat(devices.asString()).contains(",withdrawn,").contains("6.1.0 was withdrawn on 2026-02-01");
        assertThat(manager.get("/firmware/work.csv").asString())
                .contains(place.customer())
                .contains("1 × 6.1.0");
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : List.of("/firmware", "/firmware/devices.csv", "/firmware/work", "/firmware/policy")) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(technician
                        .post("/password", "/firmware/policy/" + line + "/releases", Map.of("version", "1"))
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void theWorkListTellsModelsApartThatAreToRunSomethingElse() {
        policy();
        long other =
                places.number("insert into model (maker, name, kind, firmware_line_id) select maker, name || 'X', kind,"
                        + " firmware_line_id from model where id = " + model + " returning id");
        places.tell("update device set model_id = " + other + " where id = " + second);
        places.tell("insert into firmware_release (line_id, model_id, version, stand) values (" + line + ", " + other
                + ", '6.5.0', 'RECOMMENDED')");
        String name = "Tamarack Radio TR-" + place.customer().replace("Saltmarsh ", "");
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(technician.get("/firmware/work.csv").asString()).contains(name + ": 6.4.2; " + name + "X: 6.5.0");
        places.tell("delete from firmware_release where version = '6.4.2' and line_id = " + line);
        assertThat(technician.get("/firmware/work.csv").asString())
                .contains(name + ": no release that may run is recommended; " + name + "X: 6.5.0");
    }

    @Test
    void anotherUnitInThePlaceIsShownAsNoUpgrade() {
        String at = "timestamptz '2026-03-04 12:00:00Z'";
        places.tell("insert into firmware_change (device_id, event_id, at, old_version, new_version) values (" + second
                + ", " + -second + ", " + at + ", '6.4.2', '6.4.1')");
        places.tell("insert into device_event (device_id, at, kind, title, old_value, new_value) values (" + second
                + ", " + at + ", 'FACT_CHANGED', 'Serial number changed', 'TR22-0007', 'TR22-0419')");
        assertThat(fixture.browser(Role.TECHNICIAN, null)
                        .get("/firmware/upgrades?device=" + second)
                        .asString())
                .contains("the unit of serial number TR22-0419 took the place of TR22-0007")
                .contains("not compared: another unit stands there");
    }

    @Test
    void aSiteThatIsNoNumberCountsAsNotSaid() {
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String mine = "/firmware/devices?customer=" + place.customerId();
        assertThat(technician.get(mine + "&site=" + place.siteId()).asString())
                .contains("2 found, at Pier of " + place.customer() + " only.");
        assertThat(technician.get(mine + "&site=abc").asString()).contains("2 found.");
    }

    @Test
    void whatIsRefusedIsNamedAsInTheBody() {
        Api owner = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), null));
        String at = "/firmware/policy/" + line;
        Map.of(
                        "/releases", List.of("decision", "modelId"),
                        "/minimums", List.of("identifier", "modelId", "version"),
                        "/pilots", List.of("siteId"),
                        "/exceptions", List.of("customerId", "lastDay", "reason"))
                .forEach((path, fields) -> {
                    boolean ofModel = fields.contains("modelId");
                    Response refused = owner.post(at + path, ofModel ? "{\"modelId\":999999999}" : "{}");
                    assertThat(refused.statusCode()).as(refused.asString()).isEqualTo(422);
                    assertThat(refused.jsonPath().getList("errors.field", String.class))
                            .as(path)
                            .containsExactlyInAnyOrderElementsOf(fields);
                });
    }

    @Test
    void programsReadAndDecide() {
        Api owner = Api.with(places.token(Role.OWNER, null, EnumSet.of(TokenScope.READ, TokenScope.CHANGE), null));
        String at = "/firmware/policy/" + line;
        Response made = owner.post(at + "/releases", "{\"version\":\"6.4.2\",\"decision\":\"recommended\"}");
        assertThat(made.statusCode()).as(made.asString()).isEqualTo(201);
        Response next = owner.post(at + "/releases", "{\"version\":\"6.4.3\",\"decision\":\"recommended\"}");
        assertThat(next.statusCode()).as(next.asString()).isEqualTo(201);
        JsonPath policy = owner.get(at).jsonPath();
        assertThat(owner.get(at).asString()).contains("recommended");
        assertThat(policy.getList("releases.decision")).containsExactlyInAnyOrder("accepted", "recommended");
        assertThat(owner.post(at + "/releases", "{\"version\":\"6.04.3\",\"decision\":\"accepted\"}")
                        .asString())
                .contains("6.4.3 is listed already and is the same release");
        assertThat(owner.post(at + "/minimums", "{\"version\":\"6.2\",\"identifier\":\"TR-ADV-7\"}")
                        .statusCode())
                .isEqualTo(201);
        assertThat(owner.post(
                                at + "/exceptions",
                                "{\"customerId\":" + place.customerId()
                                        + ",\"version\":\"6.1.0\",\"reason\":\"a till\"," + "\"lastDay\":\""
                                        + LocalDate.now(clock).plusDays(9) + "\"}")
                        .statusCode())
                .isEqualTo(201);
        assertThat(owner.post(at + "/pilots", "{\"siteId\":" + place.siteId() + "}")
                        .statusCode())
                .isEqualTo(201);
        JsonPath devices =
                owner.get("/firmware/devices?customer=" + place.customerId()).jsonPath();
        assertThat(devices.getList("items.status")).containsExactlyInAnyOrder("excepted", "behind");
        long exception = owner.get(at).jsonPath().getLong("exceptions[0].id");
        assertThat(owner.delete(at + "/exceptions/" + exception).statusCode()).isEqualTo(204);
        assertThat(owner.get("/firmware/devices?status=withdrawn&customer=" + place.customerId())
                        .jsonPath()
                        .getList("items.deviceId", Long.class))
                .containsExactly(place.deviceId());
        othersAreHeldBack(at, exception);
    }

    private void othersAreHeldBack(String at, long exception) {
        Api technician =
                Api.with(places.token(Role.TECHNICIAN, null, EnumSet.of(TokenScope.READ, TokenScope.CHANGE), null));
        assertThat(technician.delete(at + "/exceptions/" + exception).statusCode())
                .isEqualTo(403);
        Api narrowed = Api.with(places.token(
                Role.OWNER,
                null,
                EnumSet.allOf(TokenScope.class),
                fixture.place("Brackwater").customerId()));
        assertThat(narrowed.get("/firmware/devices").jsonPath().getList("items.deviceId", Long.class))
                .doesNotContain(place.deviceId());
        assertThat(narrowed.get(at).jsonPath().getList("pilotSites")).isEmpty();
    }
}
