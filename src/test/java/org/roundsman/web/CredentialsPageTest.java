package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Networks;
import org.roundsman.people.Role;
import org.roundsman.snmp.Snmpd;

/** Credentials and changes in a real browser, without scripts: nothing on these pages needs them. */
@QuarkusTest
class CredentialsPageTest {

    @TestHTTPResource("/")
    String address;

    @TempDir
    Path folder;

    @Inject
    FleetFixture fixture;

    @Inject
    Networks networks;

    private FleetFixture.Place place;
    private String technician;

    @BeforeEach
    void place() {
        place = fixture.place("Brackwater");
        technician = fixture.person(Role.TECHNICIAN, null);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private Screen open(int width) {
        Screen screen = Screen.withoutScripts(address, width);
        screen.signIn(technician, FleetFixture.PASSWORD);
        return screen;
    }

    private static void press(Page page, String name) {
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name))
                .click();
    }

    /** Without scripts the accessibility check cannot run: it is one. */
    private void check(int width, String path, String name) {
        try (Screen screen = Screen.open(address, width)) {
            screen.signIn(technician, FleetFixture.PASSWORD);
            screen.page().navigate(address + path);
            screen.check(name);
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void credentialsAreAddedPutInOrderAndRemoved(int width) {
        try (Screen screen = open(width)) {
            Page page = screen.page();
            page.navigate(address + "credentials/new?owner=site-" + place.siteId());
            check(width, "credentials/new?owner=site-" + place.siteId(), "credentials-new");
            page.fill("#name", "weak keys");
            page.fill("#community", "public");
            press(page, "Save");
            page.waitForURL(url -> url.matches(".*/credentials/\\d+"));
            assertThat(page.locator("main").innerText())
                    .contains("for Pier of " + place.customer())
                    .contains("well-known word")
                    .contains("readable on the wire")
                    .contains("No device uses them")
                    .doesNotContain("public\n");
            String path = page.url().substring(address.length());
            check(width, path, "credentials-one");
            Credential second = fixture.credentials()
                    .add(CredentialDraft.community(null, "second keys", 2, "quayside-and-lantern")
                            .at(place.siteId()));
            page.navigate(address + "credentials");
            assertThat(order()).containsExactly("weak keys", "second keys");
            page.locator("#credential-" + second.id).getByRole(AriaRole.BUTTON).click();
            page.waitForURL("**/credentials#credential-" + second.id);
            assertThat(order()).containsExactly("second keys", "weak keys");
            assertThat(page.locator("main").innerText())
                    .contains("read with credentials about which something is weak");
            check(width, "credentials", "credentials");
            page.navigate(address + path);
            page.locator("summary").click();
            press(page, "Remove them");
            page.waitForURL("**/credentials");
            assertThat(order()).containsExactly("second keys");
        }
    }

    private List<String> order() {
        return fixture.credentials().usableAt(place.siteId()).stream()
                .filter(c -> c.site != null)
                .map(c -> c.name)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aDeviceThatKeepsSilentIsTriedWithTheOthers(int width) throws IOException {
        try (Snmpd snmpd = new Snmpd(folder).start();
                Screen screen = open(width)) {
            long device = fixture.device(place.siteId(), place.credentialId(), "Locked", Snmpd.HOST, snmpd.port());
            fixture.credentials()
                    .add(CredentialDraft.community(null, "lantern keys", 2, Snmpd.COMMUNITY)
                            .at(place.siteId()));
            Page page = screen.page();
            page.navigate(address + "devices/" + device);
            press(page, "Try other credentials");
            page.waitForURL("**/credentials/try");
            Locator main = page.locator("main");
            assertThat(main.innerText()).contains("The device lets us in with “lantern keys”");
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of("target/screens/tried-" + width + ".png"))
                    .setFullPage(true));
            Object beyond = page.locator("html").evaluate("e => e.scrollWidth - e.clientWidth");
            assertThat(beyond).isEqualTo(0);
            press(page, "Use lantern keys from now on");
            page.waitForURL("**/devices/" + device);
            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("Past changes").setExact(true))
                    .last()
                    .click();
            page.waitForURL(url -> url.contains("/changes?"));
            page.locator("summary").first().click();
            assertThat(main.innerText())
                    .contains(technician)
                    .contains("pier keys " + place.customer())
                    .contains("lantern keys");
            check(width, page.url().substring(address.length()), "changes-of-device");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aNetworkIsGivenItsPurpose(int width) {
        networks.setPurpose(place.siteId(), "Pier guests", "other");
        try (Screen screen = open(width)) {
            Page page = screen.page();
            page.navigate(address + "sites/" + place.siteId());
            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("Networks").setExact(true))
                    .click();
            page.selectOption("main select", "guest");
            press(page, "Save");
            Awaitility.await()
                    .until(() -> networks.ofSite(place.siteId()).get(0).purpose.equals("guest"));
            assertThat(networks.ofSite(place.siteId()).get(0).purpose).isEqualTo("guest");
            check(width, "sites/" + place.siteId() + "/networks", "networks");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void changesAreSearched(int width) {
        try (Screen screen = open(width)) {
            Page page = screen.page();
            page.navigate(address + "changes");
            page.fill("#text", place.customer());
            page.selectOption("#kind", "device");
            press(page, "Show");
            page.waitForURL(url -> url.contains("kind=device"));
            assertThat(page.locator(".changes > li").count()).isEqualTo(1);
            assertThat(page.locator(".changes").innerText()).contains("Pier AP of " + place.customer());
            check(width, "changes", "changes");
        }
    }
}
