package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRuleOptions;
import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.awaitility.Awaitility;

/** A real browser without a display. */
public final class Screen implements AutoCloseable {

    private static final Set<String> SERIOUS = Set.of("serious", "critical");

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
        // no page of ours holds a frame; the other way opens a second page each time, and carries all that passed over
        // to it
        List<String> faults = new AxeBuilder(page)
                .setLegacyMode(true).options(rules(width)).analyze().getViolations().stream()
                        .filter(rule -> SERIOUS.contains(rule.getImpact()))
                        .map(Screen::describe)
                        .toList();
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

    /**
     * WCAG 2.2, 2.5.8: what can be pressed is 24 by 24 pixels, or as far from the next. Off unless asked for. Colours are the same
     * at every width, and to look at them takes longest: that is done once.
     */
    private static AxeRunOptions rules(int width) {
        AxeRunOptions options = new AxeRunOptions();
        options.setRules(Map.of("target-size", rule(true), "color-contrast", rule(width >= PHONE)));
        // of what passed, one example is enough: to describe each of a thousand cells takes most of the time
        options.setResultTypes(List.of("violations"));
        return options;
    }

    private static AxeRuleOptions rule(boolean wanted) {
        AxeRuleOptions options = new AxeRuleOptions();
        options.setEnabled(wanted);
        return options;
    }

    private static String describe(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + ", " + rule.getNodes().size() + " times, such as "
                + rule.getNodes().get(0).getHtml();
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
