package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.SelectOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.roundsman.testing.Program;
import org.roundsman.web.Screen;

/**
 * The first customer of an empty service, as its owner brings it in through a real browser: files, credentials, a sweep,
 * adoption, the wiring, a trap, and a profile for a device that no shipped profile knows. The customer's devices are
 * invented agents; the trap is sent by snmptrap of net-snmp, and what the wiring must show is read by snmpwalk.
 */
class FirstCustomerIT {

    private static final String SWITCH = "127.19.1.2";
    private static final String COMMUNITY = "lanternfield-read";
    private static final Duration SOON = Duration.ofSeconds(60);
    /** Devices have their first round within their interval, and are read for the wiring after it. */
    private static final Duration FIRST_ROUNDS = Duration.ofSeconds(180);

    @TempDir
    Path parent;

    private int agentsPort;
    private int trapsPort;
    private String address;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    @Test
    void aCustomerComesUnderWatchWithoutADatabaseOrAConfigurationFile() throws Exception {
        agentsPort = Program.freePort();
        trapsPort = Program.freePort();
        int port = Program.freePort();
        address = "http://127.0.0.1:" + port + "/";
        Path settings =
                Files.writeString(parent.resolve("ports.properties"), "roundsman.traps.port=" + trapsPort + "\n");
        DemoFleet fleet = DemoFleet.prospect(agentsPort);
        try (AgentHost agents = AgentHost.start(fleet, Faults.byHandOnly(fleet, Clock.systemUTC()), Clock.systemUTC());
                Program program = Program.start(parent.resolve("data"), port, "--config=" + settings)
                        .awaitReady();
                Screen screen = Screen.open(address, 1280)) {
            FirstSignIn.on(screen, program);
            Page page = screen.page();
            importFiles(page);
            enterCommunity(page, "Community", COMMUNITY);
            enterCommunity(page, "As delivered", "public");
            assertThat(page.locator("main").innerText()).doesNotContain(COMMUNITY);
            sweepAndAdopt(screen);
            drawWiring(screen);
            showTrap(page);
            writeProfile(screen);
            screen.check("first-customer-device");
            screen.complaints("status of 422");
            assertThat(agents.answers()).isPositive();
        }
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    private void importFiles(Page page) {
        page.navigate(address + "onboarding");
        page.setInputFiles(
                "#files", new Path[] {Path.of("docs/examples/customers.csv"), Path.of("docs/examples/sites.csv")});
        press(page, "Make a dry run");
        page.waitForSelector("#apply");
        assertThat(page.locator("main").innerText()).contains("3 new", "Oven Court", "Crumb Street");
        page.click("#apply");
        page.waitForSelector("h1:text-is(\"Imported\")");
    }

    private void enterCommunity(Page page, String name, String community) {
        page.navigate(address + "credentials/new");
        page.fill("#name", name);
        page.selectOption("#owner", new SelectOption().setLabel("Lanternfield Bakery, every site"));
        page.selectOption("#version", "2");
        page.fill("#community", community);
        press(page, "Save");
        page.waitForURL("**/credentials**");
    }

    private void sweepAndAdopt(Screen screen) {
        Page page = screen.page();
        page.navigate(address + "onboarding");
        page.locator("tr", new Page.LocatorOptions().setHasText("Oven Court"))
                .locator("a", new Locator.LocatorOptions().setHasText("Look for devices"))
                .click();
        page.fill("#ranges", "127.19.1.1-127.19.1.20");
        page.fill("#ports", String.valueOf(agentsPort));
        press(page, "Save and start the sweep");
        page.waitForSelector("#found", new Page.WaitForSelectorOptions().setTimeout(SOON.toMillis()));
        Locator lines = page.locator("table.sweep-found tbody tr");
        assertThat(lines.count()).isEqualTo(8);
        // nobody but a person can tell what the unknown maker's unit is
        for (Locator kind : page.locator("select[name=kind]").all()) {
            if (kind.inputValue().isEmpty()) {
                kind.selectOption(new SelectOption().setLabel("access point"));
            }
        }
        screen.check("first-customer-found");
        for (Locator tick : page.locator("input[name=tick]").all()) {
            tick.check();
        }
        press(page, "Adopt what is ticked");
        page.waitForSelector("text=Adopted: 8 new devices");
    }

    private void drawWiring(Screen screen) throws Exception {
        Page page = screen.page();
        page.navigate(address);
        page.locator("main a", new Page.LocatorOptions().setHasText("Oven Court"))
                .first()
                .click();
        page.waitForURL("**/sites/*");
        String site = page.url();
        page.navigate(site + "/wiring");
        // lldpRemSysName (IEEE 802.1AB): who the switch itself says is at which of its ports
        List<String> neighbours = snmpwalk("1.0.8802.1.1.2.1.4.1.1.9");
        assertThat(neighbours).hasSizeGreaterThan(3);
        await().atMost(FIRST_ROUNDS).untilAsserted(() -> {
            page.navigate(site + "/wiring");
            for (String line : neighbours) {
                String name = line.replaceFirst(".*STRING: \"?([^\".]+).*", "$1");
                String port = line.replaceFirst("^[.0-9]*\\.([0-9]+)\\.[0-9]+ = .*", "$1");
                if (name.contains("-ap-")) {
                    assertThat(page.locator("xpath=//li[span//a[text()='" + name + "']]/span[@class='under']")
                                    .allInnerTexts())
                            .as(line)
                            .singleElement()
                            .asString()
                            .contains("port " + port);
                }
            }
        });
        screen.check("first-customer-wiring");
    }

    private List<String> snmpwalk(String subtree) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        "snmpwalk", "-On", "-v", "2c", "-c", COMMUNITY, SWITCH + ":" + agentsPort, subtree)
                .redirectErrorStream(true)
                .start();
        List<String> lines =
                new String(process.getInputStream().readAllBytes()).lines().toList();
        assertThat(process.waitFor()).as(lines.toString()).isZero();
        return lines;
    }

    /** linkDown by SNMPv2-MIB and IF-MIB (RFC 3418, RFC 2863), from the switch's own address. */
    private void showTrap(Page page) throws Exception {
        openDevice(page, "oven-court-switch-1");
        Process sent = new ProcessBuilder(
                        "snmptrap",
                        "--clientaddr=" + SWITCH,
                        "-v",
                        "2c",
                        "-c",
                        COMMUNITY,
                        "127.0.0.1:" + trapsPort,
                        "",
                        "1.3.6.1.6.3.1.1.5.3",
                        "1.3.6.1.2.1.2.2.1.1.7",
                        "i",
                        "7")
                .inheritIO()
                .start();
        assertThat(sent.waitFor()).isZero();
        page.waitForCondition(() -> page.locator("#happened").innerText().contains("Link down"));
    }

    private void openDevice(Page page, String name) {
        page.navigate(address);
        page.locator("main a", new Page.LocatorOptions().setHasText("Oven Court"))
                .first()
                .click();
        page.waitForURL("**/sites/*");
        page.locator("main a", new Page.LocatorOptions().setHasText(name))
                .first()
                .click();
        page.waitForURL("**/devices/*");
    }

    private void writeProfile(Screen screen) {
        Page page = screen.page();
        openDevice(page, "oven-court-ap-06");
        String device = page.url();
        assertThat(page.locator("main").innerText()).contains("No radio was read yet");
        page.navigate(address + "profiles/workbench");
        page.fill("#search", "oven-court-ap-06");
        press(page, "Find");
        page.getByText("Read everything of oven-court-ap-06").click();
        page.waitForSelector("text=look at it", new Page.WaitForSelectorOptions().setTimeout(SOON.toMillis()));
        page.getByText("look at it").first().click();
        page.getByText("Write lines for it: 1.3.6.1.4.1.32473.9.2.2.1").click();
        screen.check("first-customer-propose");
        page.locator("select[name=key]").nth(0).selectOption("radio.label");
        page.locator("select[name=key]").nth(3).selectOption("radio.clients");
        press(page, "Open the editor with these lines");
        page.fill("#text", page.inputValue("#text").replace("my-maker", "gorsehill"));
        page.waitForSelector("#checked .good");
        press(page, "Try it");
        page.waitForSelector("#tried table");
        assertThat(page.locator("#tried").innerText()).contains("radio.clients");
        press(page, "Save");
        page.waitForURL("**/versions/1");
        press(page, "Put version 1 in use");
        page.waitForURL(url -> url.matches(".*/profiles/\\d+"));
        page.navigate(device);
        press(page, "Poll now");
        page.waitForSelector("#poll section, #poll table");
        await().atMost(SOON).until(() -> {
            page.navigate(device);
            return !page.locator("[aria-labelledby=radios]").innerText().contains("No radio was read yet");
        });
    }
}
