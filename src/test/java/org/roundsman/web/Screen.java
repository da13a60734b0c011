package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.awaitility.Awaitility;

/** A real browser without a display. */
public final class Screen implements AutoCloseable {

    private static Playwright playwright;
    private static final int PHONE = 500;

    /** Whether each page that is checked is kept as a picture as well, which takes a tenth of the time. */
    private static final boolean PICTURES = Boolean.getBoolean("roundsman.pictures");

    private static Browser browser;

    private final String address;
    private final int width;
    private final BrowserContext context;
    private final Page page;
    private final List<String> complaints = new ArrayList<>();

    private Screen(String address, int width, boolean scripts) {
        this.address = address;
        this.width = width;
        context = browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, width < PHONE ? 844 : 860)
                        .setJavaScriptEnabled(scripts));
        page = context.newPage();
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") || message.type().equals("warning")) {
                complaints.add(message.text() + " at " + page.url());
            }
        });
        page.onPageError(error -> complaints.add(error + " at " + page.url()));
    }

    public static Screen open(String address, int width) {
        return new Screen(address, width, true);
    }

    public static Screen withoutScripts(String address, int width) {
        return new Screen(address, width, false);
    }

    private static synchronized Browser browser() {
        if (browser == null) {
            playwright = Playwright.create(
                    new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
            browser = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of("/usr/bin/chromium"))
                            .setArgs(List.of(
                                    "--no-sandbox",
                                    "--disable-gpu",
                                    "--disable-quic",
                                    "--no-first-run",
                                    "--disable-background-networking",
                                    "--disable-component-update",
                                    "--disable-sync")));
        }
        return browser;
    }

    /** Ends the browser; the next screen starts another. */
    public static synchronized void closeAll() {
        if (browser != null) {
            browser.close();
            playwright.close();
            browser = null;
        }
    }

    public Page page() {
        return page;
    }

    public void signIn(String name, String password) {
        page.navigate(address);
        page.fill("#name", name);
        page.fill("#password", password);
        page.click("main button");
        page.waitForURL(url -> !url.contains("sign-in"));
    }

    /** Loads the page again until it shows that, as people without scripts do; it may still be on its way at first. */
    public void reloadUntil(String selector) {
        Awaitility.await()
                .pollInSameThread()
                .atMost(Duration.ofSeconds(30))
                .ignoreExceptionsInstanceOf(PlaywrightException.class)
                .untilAsserted(() -> {
                    page.navigate(page.url());
                    assertThat(page.locator(selector).count()).as(selector).isPositive();
                });
    }

    /** Takes a picture of the whole page, for people to look at. */
    private void picture(String name) {
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(Path.of("target/screens/" + name + "-" + width + ".png"))
                .setFullPage(true));
    }

    /** No serious fault for people with assistive technology or large fingers, and nothing wider than the screen. */
    public void check(String name) {
        List<?> faults = faults();
        // looking at a page leaves empty style attributes behind, which the next live part would copy against the
        // policy
        page.evaluate("document.querySelectorAll('[style=\"\"]').forEach(each => each.removeAttribute('style'))");
        if (PICTURES || !faults.isEmpty()) {
            picture(name);
        }
        assertThat(faults).as(name + " at " + width).isEmpty();
        Object beyond = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assertThat(beyond).as(name + " is wider than " + width).isEqualTo(0);
    }

    /** Faults that axe-core calls serious or critical, in words. */
    private List<?> faults() {
        if (page.evaluate("typeof axe").equals("undefined")) {
            bringAxe();
        }
        return (List<?>) page.evaluate("""
                rules => axe.run({ rules, resultTypes: ['violations'] }).then(found => found.violations
                    .filter(rule => rule.impact === 'serious' || rule.impact === 'critical')
                    .map(rule => `${rule.id}: ${rule.help}, ${rule.nodes.length} times, such as ${rule.nodes[0].html}`))
                """, rules(width));
    }

    /** Half a megabyte: the way through the page's own evaluation reads it three times more than the browser has to. */
    private void bringAxe() {
        CDPSession session = context.newCDPSession(page);
        JsonObject script = new JsonObject();
        script.addProperty("expression", AxeBuilder.getAxeScript() + ";0");
        session.send("Runtime.evaluate", script);
        session.detach();
    }

    /**
     * WCAG 2.2, 2.5.8: what can be pressed is 24 by 24 pixels, or as far from the next. Off unless asked for. Colours are the same
     * at every width, and to look at them takes longest: that is done once.
     */
    private static Map<String, ?> rules(int width) {
        return Map.of("target-size", Map.of("enabled", true), "color-contrast", Map.of("enabled", width >= PHONE));
    }

    /** Nothing was complained about in the console, but for what a test brought about on purpose. */
    public void complaints(String... expected) {
        assertThat(complaints)
                .filteredOn(text -> Arrays.stream(expected).noneMatch(text::contains))
                .isEmpty();
    }

    @Override
    public void close() {
        context.close();
    }
}
