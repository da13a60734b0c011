package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.people.Role;
import org.roundsman.snmp.SentByNetSnmp;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;
import org.roundsman.topology.TableFixture;
import org.roundsman.topology.WiringStore;
import org.roundsman.traps.ReceiverState;
import org.roundsman.traps.TrapReceiver;

/** Notifications of net-snmp, from the wire to the page, which shows them by itself. */
@QuarkusTest
class TrapPageTest {

    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final List<String> ACCESS = List.of("-v", "2c", "-c", "quayside-secret");

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    TrapReceiver receiver;

    @Inject
    Timeline timeline;

    @Inject
    Devices devices;

    @Inject
    WiringStore wiring;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private String from;
    private long device;

    @BeforeEach
    void aDeviceOfItsOwnAddress() {
        place = fixture.place("Saltmarsh");
        from = "127.98.0." + NUMBER.incrementAndGet();
        device = fixture.device(place.siteId(), place.credentialId(), "Switch of the pier", from, 161);
        // the directory of senders takes changes up within a second
        await().until(() -> inform(from, "1.3.6.1.6.3.1.1.5.2") == 0);
        await().until(() -> timeline.last(device) > 0);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private int inform(String sender, String... arguments) {
        List<String> all = new java.util.ArrayList<>(List.of("4711"));
        all.addAll(List.of(arguments));
        return SentByNetSnmp.run("snmpinform", sender, port(), ACCESS, all.toArray(String[]::new))
                .exit();
    }

    private int port() {
        return ((ReceiverState.Listening) receiver.state()).port();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aTrapShowsUpByItself(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "devices/" + device);
            assertThat(page.locator("#happened").innerText())
                    .contains("Warm start")
                    .doesNotContain("eth1");
            assertThat(inform(
                            from,
                            "1.3.6.1.6.3.1.1.5.3",
                            "1.3.6.1.2.1.2.2.1.1.2",
                            "i",
                            "2",
                            "1.3.6.1.2.1.31.1.1.1.1.2",
                            "s",
                            "eth1"))
                    .isZero();
            page.waitForCondition(
                    () -> page.locator("#happened").innerText().contains("Link down: interface eth1 (2)"));
            page.locator("#happened summary").first().click();
            assertThat(page.locator("#happened").innerText()).contains("Inform of SNMP v2c from " + from);
            screen.check("happened");
            screen.complaints();
        }
    }

    /** The switch calls interface 10013 its port 13, and hears an access point there by LLDP (IEEE 802.1AB). */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aLinkIsToldByItsPortAndWhoHangsThere(int width) {
        String at = "127.92.1." + NUMBER.incrementAndGet();
        long wired = device(DeviceKind.NETWORK_SWITCH, "garden-switch", at);
        device(DeviceKind.ACCESS_POINT, "garden-ap-09", "127.92.2." + NUMBER.incrementAndGet());
        Instant read = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        TableFixture tables =
                TableFixture.aSwitch("02:00:5e:00:54:01", 24).hears(13, "02:00:5e:00:55:09", "garden-ap-09");
        wiring.full(wired, place.siteId(), tables.reading(DeviceKind.NETWORK_SWITCH, read));
        await().until(() -> inform(at, "1.3.6.1.6.3.1.1.5.3", "1.3.6.1.2.1.2.2.1.1.10013", "i", "10013") == 0);
        assertThat(inform(at, "1.3.6.1.6.3.1.1.5.4", "1.3.6.1.2.1.2.2.1.1.20099", "i", "20099"))
                .isZero();
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "devices/" + wired);
            page.waitForCondition(() -> page.locator("#happened").innerText().contains("Link up: interface 20099"));
            assertThat(page.locator("#happened").innerText()).contains("Link down: port 13 (garden-ap-09)");
            screen.check("happened-port");
            screen.complaints();
        }
    }

    private long device(DeviceKind kind, String name, String host) {
        return devices.add(
                        place.siteId(),
                        new DeviceDraft(name, kind, host, 161, place.credentialId(), null, "", 60, false))
                .id;
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void eventsAreChosenBySortAndTurnedPageByPage(int width) {
        timeline.add(IntStream.range(0, 23)
                .mapToObj(i -> DeviceEvent.change(
                        device, clock.instant(), EventKind.FACT_CHANGED, "Firmware changed", "4." + i, "4." + (i + 1)))
                .toList());
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "devices/" + device);
            page.locator("#happened-FACT_CHANGED").click();
            page.waitForCondition(() -> !page.locator("#happened").innerText().contains("Warm start"));
            page.locator("#happened-older").click();
            page.waitForCondition(() -> page.locator("#happened").innerText().contains("Page 2 of 3"));
            page.locator("#happened-NOTIFICATION").click();
            page.waitForCondition(() -> page.locator("#happened tbody tr").count() == 1);
            screen.check("happened-chosen");
            screen.complaints();
        }
        try (Screen screen = Screen.withoutScripts(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "devices/" + device);
            page.locator("#happened-FACT_CHANGED").click();
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Older"))
                    .click();
            assertThat(page.locator("main").innerText()).contains("Page 2 of 3").contains("Back to the page of");
        }
    }

    @Test
    void aViewerSeesWhatHappenedToOwnDevicesOnly() {
        FleetFixture.Place other = fixture.place("Quillfeather");
        String path = "/devices/" + device + "/happened";
        Browser own = fixture.browser(Role.VIEWER, place.customerId());
        assertThat(own.get(path).asString()).contains("Warm start");
        assertThat(own.get(path + "?seen=0-0").statusCode()).isEqualTo(200);
        Browser stranger = fixture.browser(Role.VIEWER, other.customerId());
        assertThat(stranger.get(path).statusCode()).isEqualTo(404);
        assertThat(stranger.get(path + "?seen=0-0").statusCode()).isEqualTo(404);
        assertThat(stranger.get("/own-health").statusCode()).isEqualTo(403);
    }

    @Test
    void nothingNewIsAnEmptyAnswer() {
        String path = "/devices/" + device + "/happened";
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        String stamp = technician.get(path).asString().replaceAll("(?s).*seen=([0-9]+-[0-9]+).*", "$1");
        assertThat(technician.get(path + "?seen=" + stamp).statusCode()).isEqualTo(204);
        assertThat(technician.get(path + "?seen=0-0").statusCode()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void strangersStandOnOwnHealth(int width) {
        SentByNetSnmp.run("snmptrap", "127.97.0.1", port(), ACCESS, "4711", "1.3.6.1.6.3.1.1.5.1");
        List<String> guess = List.of("-v", "1", "-c", "guessed");
        SentByNetSnmp.run("snmptrap", from, port(), guess, "1.3.6.1.4.1.32473.1", from, "0", "0", "1");
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.waitForCondition(() -> {
                page.navigate(address + "own-health");
                String text = page.locator("main").innerText();
                return text.contains("no device has this address") && text.contains("the community fits none");
            });
            assertThat(page.locator("main").innerText()).contains("127.97.0.1").contains(from);
            screen.check("own-health-notices");
            screen.complaints();
        }
    }
}
