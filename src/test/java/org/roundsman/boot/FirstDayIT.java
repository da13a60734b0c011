package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.SelectOption;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.snmp.Snmpd;
import org.roundsman.testing.Program;
import org.roundsman.web.Screen;

/**
 * The first day with an empty service, as its owner lives it, in a real browser: sign in with the password that the start
 * showed, enter a customer, a site, credentials and one device by hand. The device is Debian's snmpd, an agent that
 * nobody here wrote; what the pages show of it is compared with what snmpget prints.
 */
class FirstDayIT {

    /** sysDescr (RFC 3418). */
    private static final String DESCRIPTION = "1.3.6.1.2.1.1.1.0";

    private static final Duration SILENT_WITHIN = Duration.ofSeconds(90);

    @TempDir
    Path parent;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    @Test
    void aDeviceEnteredByHandAppearsFallsSilentAndComesBack() throws Exception {
        int port = Program.freePort();
        try (Snmpd snmpd = new Snmpd(parent).start();
                Program program = Program.start(parent.resolve("data"), port).awaitReady();
                Screen screen = Screen.open("http://127.0.0.1:" + port + "/", 1280)) {
            Page page = screen.page();
            FirstSignIn.on(screen, program);
            assertThat(page.locator("main").innerText()).contains("nothing to make rounds of yet");
            enterCustomerAndSite(page);
            enterCredentials(page);
            enterDevice(page, snmpd);

            await().atMost(SILENT_WITHIN).until(() -> reload(page).contains("snmpd-under-test"));
            Map<String, String> said = snmpd.get(DESCRIPTION);
            assertThat(reload(page)).contains("answering", said.get(DESCRIPTION), "Invented rack");

            snmpd.stop();
            await().atMost(SILENT_WITHIN).until(() -> now(page).contains("silent"));
            assertThat(now(page)).contains("nothing listens on that SNMP port");
            snmpd.start();
            await().atMost(SILENT_WITHIN).until(() -> now(page).contains("answering"));
            reload(page);
            assertThat(page.locator("[aria-labelledby=spans] tbody tr").allInnerTexts())
                    .hasSize(3)
                    .element(1)
                    .asString()
                    .contains("silent", "nothing listens");
            // a refused form, twice, is an answer of 422 to the browser
            screen.complaints("status of 422");
        }
    }

    private static void enterCustomerAndSite(Page page) {
        page.click("nav >> text=Customers");
        page.click("text=Add customer");
        page.fill("#name", "Pebblegate Dental");
        page.fill("#note", "Invented for this test");
        page.click("main button");
        page.waitForURL("**/sites/new");
        page.fill("#name", "Harbour clinic");
        page.fill("#timeZone", "Europe/Atlantis");
        page.click("main button:text-is(\"Save\")");
        assertThat(page.locator("#timeZone-wrong").innerText()).contains("Europe/Berlin");
        page.fill("#timeZone", "Europe/Berlin");
        page.fill("#hours", "Mon-Fri 08:00-18:00");
        page.click("main button:text-is(\"Save\")");
    }

    private static void enterCredentials(Page page) {
        page.click("nav >> text=Credentials");
        page.click("text=Add credentials");
        page.fill("#name", "read only");
        page.selectOption("#version", "2");
        page.fill("#community", Snmpd.COMMUNITY);
        page.click("main button:text-is(\"Save\")");
        assertThat(page.locator("main").innerText()).contains("read only").doesNotContain(Snmpd.COMMUNITY);
    }

    private static void enterDevice(Page page, Snmpd snmpd) {
        page.click("nav >> text=Fleet");
        page.click("text=Harbour clinic");
        page.click("text=Add device");
        page.fill("#name", "rack-1");
        page.selectOption("#kind", "GATEWAY");
        page.fill("#host", "127.0.7.300");
        page.fill("#port", String.valueOf(snmpd.port()));
        page.fill("#intervalSeconds", "10");
        page.selectOption("#credentialId", new SelectOption().setIndex(1));
        page.click("main button:text-is(\"Save\")");
        assertThat(page.locator("#host-wrong").innerText()).contains("neither an IPv4");
        page.fill("#host", Snmpd.HOST);
        page.click("main button:text-is(\"Save\")");
        page.waitForURL(Pattern.compile(".*/devices/\\d+"));
    }

    private static String reload(Page page) {
        page.reload();
        return page.locator("main").innerText();
    }

    /** What the page shows by itself, without being loaded again. */
    private static String now(Page page) {
        return page.locator("#device-live .big").innerText();
    }
}
