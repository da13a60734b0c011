package org.roundsman.web.topology;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.people.Role;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;
import org.roundsman.topology.TableFixture;
import org.roundsman.topology.Topology;
import org.roundsman.topology.WiringStore;
import org.roundsman.web.Browser;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.Screen;

/** One gateway, six switches and sixty access points, as a technician sees them on a screen and on a phone. */
@QuarkusTest
class WiringPageTest {

    private static final String GATEWAY = "02:00:5e:00:53:01";

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    Devices devices;

    @Inject
    WiringStore store;

    @Inject
    Topology topology;

    @Inject
    Timeline timeline;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private final List<Long> switches = new ArrayList<>();
    private final List<Long> points = new ArrayList<>();
    private long gateway;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    @BeforeEach
    void place() {
        place = fixture.place("Brackwater");
    }

    private static String switchMac(int n) {
        return String.format("02:00:5e:00:54:%02x", n);
    }

    private static String pointMac(int n) {
        return String.format("02:00:5e:00:55:%02x", n);
    }

    private long device(DeviceKind kind, String name, int last) {
        DeviceDraft draft = new DeviceDraft(
                name, kind, "127.98." + kind.ordinal() + "." + last, 16_098, place.credentialId(), null, "", 60, false);
        return devices.add(place.siteId(), draft).id;
    }

    /** The house: the first switch carries the others, each carries ten access points; the last two are not connected. */
    private void house() {
        gateway = device(DeviceKind.GATEWAY, "gw-brackwater", 1);
        for (int s = 1; s <= 6; s++) {
            switches.add(device(DeviceKind.NETWORK_SWITCH, "sw-" + s, s));
        }
        for (int p = 1; p <= 60; p++) {
            points.add(device(DeviceKind.ACCESS_POINT, "ap-room-" + (100 + p), p));
        }
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS).minusSeconds(180);
        read(gateway, TableFixture.aSwitch(GATEWAY, 4).hears(1, switchMac(1), "sw-1"), DeviceKind.GATEWAY, now);
        for (int s = 1; s <= 6; s++) {
            TableFixture tables = TableFixture.aSwitch(switchMac(s), 24);
            tables.hears(24, s == 1 ? GATEWAY : switchMac(1), s == 1 ? "gw-brackwater" : "sw-1");
            if (s == 1) {
                for (int other = 2; other <= 6; other++) {
                    tables.hears(other + 16, switchMac(other), "sw-" + other);
                }
            }
            for (int p = 1; p <= 10; p++) {
                int n = (s - 1) * 10 + p;
                if (n <= 58) {
                    tables.hears(p, pointMac(n), "ap-room-" + (100 + n)).power(p, n == 3 ? 4 : 3, 5);
                }
            }
            read(switches.get(s - 1), tables, DeviceKind.NETWORK_SWITCH, now);
        }
    }

    private void read(long device, TableFixture tables, DeviceKind kind, Instant at) {
        store.full(device, place.siteId(), tables.reading(kind, at));
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theHouseIsDrawnAndTold(int width) {
        house();
        String person = fixture.person(Role.TECHNICIAN, null);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(person, FleetFixture.PASSWORD);
            page.navigate(address + "sites/" + place.siteId());
            assertThat(page.locator("main").innerText()).contains("the switch port of 58 of 61 access points is known");
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Show the picture"))
                    .click();
            page.waitForURL("**/sites/" + place.siteId() + "/wiring");
            screen.check("wiring");
            boolean wide = width > 900;
            assertThat(page.locator(".wiring-picture").isVisible()).isEqualTo(wide);
            String list = page.locator(".wiring-list").innerText();
            assertThat(list)
                    .contains("ap-room-158")
                    .containsPattern(
                            "on port 8 \\(LLDP, seen [3-9] min ago\\): up, 1\u00a0Gb/s; power delivered, class 4")
                    .contains("power fault")
                    .contains("Place not known yet");
            assertThat(page.locator(".wiring a").count()).isEqualTo(68);
            assertThat(page.locator(".wiring-list").isVisible()).isEqualTo(!wide);
            if (wide) {
                page.check("#in-words");
            }
            page.getByText("24 ports, 24 up").first().click();
            page.getByText("What it hears by LLDP").first().click();
            screen.check("wiring-ports");
            page.locator(".wiring-list a[href='/devices/" + points.get(0) + "']")
                    .click();
            page.waitForURL("**/devices/" + points.get(0));
            assertThat(page.locator("main").innerText())
                    .containsPattern(
                            "Hangs on port 1 of sw-1 \\(LLDP, seen [3-9] min ago\\), up, 1\u00a0Gb/s; power delivered,"
                                    + " class 4[.]");
            screen.check("placed-device");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aPersonSetsAPortAndTakesItBack(int width) {
        house();
        long point = points.get(59);
        String person = fixture.person(Role.TECHNICIAN, null);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(person, FleetFixture.PASSWORD);
            page.navigate(address + "devices/" + point);
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Set its port"))
                    .click();
            screen.check("set-port");
            page.selectOption("#place", switches.get(5) + ":10010");
            page.fill("#note", "traced by hand");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Set it"))
                    .click();
            page.waitForURL("**/devices/" + point);
            assertThat(page.locator("main").innerText()).contains("Hangs on port 10 of sw-6 (set by a person");
            page.navigate(address + "devices/" + point + "/port");
            assertThat(page.locator("main").innerText())
                    .contains(person + " set port 10 of sw-6")
                    .contains("traced by hand");
            screen.check("set-port-word");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Take it back"))
                    .click();
            page.waitForURL("**/devices/" + point);
            assertThat(page.locator("main").innerText()).contains("Not known yet");
            screen.complaints();
        }
        assertThat(timeline.latest(point, 5))
                .extracting(event -> event.kind())
                .containsExactly(EventKind.PORT_CHANGED, EventKind.PORT_CHANGED);
    }

    /** A site of which nothing was read shows its devices all the same. */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void nothingKnownIsSaid(int width) {
        String person = fixture.person(Role.TECHNICIAN, null);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(person, FleetFixture.PASSWORD);
            page.navigate(address + "sites/" + place.siteId() + "/wiring");
            assertThat(page.locator("main").textContent())
                    .contains("It is not known yet where the access points hang.")
                    .contains("Place not known yet");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Read it now"))
                    .click();
            page.waitForURL("**/wiring?asked=*");
            assertThat(page.locator("main").innerText()).containsPattern("No device of this site is watched|silent");
            screen.check("wiring-unknown");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "asked=0&silent=0 | No device of this site is watched, so none can be read.",
                "asked=1&silent=0 | 1 device is being read; this page refreshes itself.",
                "asked=0&silent=1 | No device is being read now. 1 device is silent or not reached yet, and keeps what"
                        + " was known of it.",
                "asked=7&silent=2 | 7 devices are being read, one after the other; this page refreshes itself. 2"
                        + " devices are silent or not reached yet, and keep what was known of them."
            })
    void whatIsReadIsToldInWholeSentences(String query, String told) {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        assertThat(browser.get("/sites/" + place.siteId() + "/wiring?" + query).asString())
                .contains(told);
    }

    @Test
    void whatCannotBeIsRefusedWithItsMend() {
        house();
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String form = "/devices/" + points.get(0) + "/port";
        FleetFixture.Place other = fixture.place("Elsewhere");
        for (String bad : List.of("", "x", other.deviceId() + ":", points.get(0) + ":", switches.get(0) + ":77")) {
            Response answer = browser.post(form, form, Map.of("place", bad, "note", ""));
            assertThat(answer.statusCode()).as(bad).isEqualTo(422);
            assertThat(answer.asString()).contains("id=\"place-wrong\"");
        }
        Response long1 = browser.post(form, form, Map.of("place", switches.get(0) + ":10001", "note", "x".repeat(501)));
        assertThat(long1.statusCode()).isEqualTo(422);
        assertThat(long1.asString()).contains("at most 500 characters");
        assertThat(browser.post(form, form, Map.of("place", switches.get(1) + ":", "note", ""))
                        .statusCode())
                .isEqualTo(303);
        String circle = "/devices/" + switches.get(1) + "/port";
        Response refused = browser.post(circle, circle, Map.of("place", points.get(0) + ":", "note", ""));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).contains("itself set to hang below");
    }

    /** What a person set holds against what is read, which is shown beside it. */
    @Test
    void aKeptPortStaysWhenThePointIsHeardElsewhere() {
        house();
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String form = "/devices/" + points.get(0) + "/port";
        assertThat(browser.get(form).asString()).contains("Keep this port as it is");
        browser.post(form, form, Map.of("place", switches.get(0) + ":10001", "note", ""));
        TableFixture moved = TableFixture.aSwitch(switchMac(1), 24).hears(12, pointMac(1), "ap-room-101");
        read(switches.get(0), moved, DeviceKind.NETWORK_SWITCH, clock.instant());
        var node = topology.tree(CustomerScope.everyone(), place.siteId())
                .orElseThrow()
                .node(points.get(0))
                .orElseThrow();
        assertThat(node.place().portTitle()).isEqualTo("port 1");
        assertThat(node.place().notes()).anyMatch(note -> note.contains("Does not fit what was set"));
        assertThat(browser.get("/sites/" + place.siteId() + "/wiring").asString())
                .contains("What does not fit")
                .contains("sw-1 hears it on port 12");
    }

    @Test
    void aViewerLooksAndSetsNothing() {
        house();
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        String page = viewer.get("/sites/" + place.siteId() + "/wiring").asString();
        assertThat(page).contains("ap-room-101").doesNotContain("Read it now").doesNotContain("Set its port");
        assertThat(viewer.get("/devices/" + points.get(0) + "/port").statusCode())
                .isEqualTo(403);
        FleetFixture.Place other = fixture.place("Elsewhere");
        assertThat(viewer.get("/sites/" + other.siteId() + "/wiring").statusCode())
                .isEqualTo(404);
        assertThat(topology.wiring(CustomerScope.of(other.customerId()), place.siteId()))
                .isEmpty();
        assertThat(topology.pathUp(CustomerScope.of(other.customerId()), points.get(0)))
                .isEmpty();
        assertThat(topology.below(CustomerScope.of(other.customerId()), switches.get(0)))
                .isEmpty();
        assertThat(topology.below(CustomerScope.of(place.customerId()), switches.get(1)))
                .hasSize(10);
    }
}
