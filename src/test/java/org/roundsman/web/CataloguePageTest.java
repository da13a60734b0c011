package org.roundsman.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.people.Role;

/** Models and firmware lines as people keep them, in a real browser. */
@QuarkusTest
class CataloguePageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    Catalogue catalogue;

    @Inject
    MarkedPlaces places;

    private String word;

    @BeforeEach
    void aWord() {
        word = UUID.randomUUID().toString().substring(0, 8);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    private static String text(Page page) {
        return page.locator("main").innerText();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aLineAndAModelAreEnteredChangedAndRemoved(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.ACCOUNT_MANAGER, null), FleetFixture.PASSWORD);
            page.navigate(address + "firmware-lines");
            page.fill("#name", "TR access points " + word);
            page.selectOption("#scheme", "PATTERN");
            page.fill("#pattern", "(\\d*)\\d*\\d*\\d*\\d*x");
            press(page, "Add it");
            assertThat(text(page)).contains("too many ways");
            screen.check("catalogue-line-refused");
            page.fill("#pattern", "v?(\\d+)\\.(\\d+)\\.(\\d+)");
            press(page, "Add it");
            screen.check("catalogue-lines");
            assertThat(text(page)).contains("TR access points " + word).contains("v?(\\d+)");
            page.navigate(address + "models/new");
            screen.check("catalogue-new");
            entered(page);
            press(page, "Save");
            assertThat(text(page)).contains("Not saved").contains("say where that day stands written");
            screen.check("catalogue-refused");
            page.fill("#endOfSaleSource", "notice TR-2026-03 of the maker (invented)");
            press(page, "Save");
            assertThat(page.url()).contains("/models#model-");
            String row = page.locator("tr", new Page.LocatorOptions().setHasText("TR-" + word))
                    .innerText();
            assertThat(row)
                    .contains("1,249.00 EUR")
                    .contains("36 months from delivery, return to bench")
                    .contains("2021-03-31")
                    .contains("over")
                    .contains("notice TR-2026-03")
                    .contains("TR access points " + word)
                    .contains("2.4 and 5 GHz")
                    .contains("PoE class 4");
            screen.check("catalogue-models");
            changed(screen);
            screen.complaints("422", "409");
        }
    }

    private void entered(Page page) {
        page.fill("#maker", "Tamarack Radio");
        page.fill("#name", "TR-" + word);
        page.fill("#radios", "2");
        page.fill("#bands", "5, 2.4");
        page.selectOption("#antenna", "external");
        page.selectOption("#poeClass", "4");
        page.fill("#mount", "mast clamp");
        page.check("input[name=outdoor]");
        page.fill("#listPrice", "1249");
        page.fill("#currency", "eur");
        page.selectOption(
                "#firmwareLineId",
                new com.microsoft.playwright.options.SelectOption().setLabel("TR access points " + word));
        page.selectOption("#termsKind", "MONTHS");
        page.fill("#termsMonths", "36");
        page.selectOption("#termsFrom", "DELIVERY");
        page.selectOption("#termsService", "BENCH");
        page.fill("#endOfSale", "2021-03-31");
    }

    private void changed(Screen screen) {
        Page page = screen.page();
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("TR-" + word))
                .click();
        assertThat(page.inputValue("#listPrice")).isEqualTo("1249.00");
        assertThat(page.isChecked("input[name=outdoor]")).isTrue();
        screen.check("catalogue-edit");
        page.selectOption("#poeClass", "mains");
        press(page, "Save");
        Model model = catalogue.all().stream()
                .filter(one -> one.name.equals("TR-" + word))
                .findFirst()
                .orElseThrow();
        assertThat(model.mains).isTrue();
        assertThat(model.poeClass).isNull();
        long line = model.firmwareLineId;
        page.navigate(address + "firmware-lines/" + line);
        screen.check("catalogue-line");
        page.locator("summary").click();
        press(page, "Remove it");
        assertThat(text(page)).contains("1 model takes this line");
        page.navigate(address + "models/" + model.id);
        page.locator("summary").click();
        press(page, "Remove it");
        assertThat(page.url()).endsWith("/models");
        assertThat(text(page)).doesNotContain("TR-" + word);
    }

    @Test
    void aFileOfModelsGoesThroughTheDryRunWithoutScripts() {
        try (Screen screen = Screen.withoutScripts(address, 390)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.OWNER, null), FleetFixture.PASSWORD);
            page.navigate(address + "models");
            String csv =
                    "maker,model,kind,list_price,currency\r\nTamarack Radio,TR-" + word + ",access point,249,EUR\r\n";
            page.setInputFiles("#files", new FilePayload("models.csv", "text/csv", csv.getBytes(UTF_8)));
            press(page, "Make a dry run");
            screen.reloadUntil("main:has-text('nothing is written yet')");
            assertThat(text(page)).contains("TR-" + word).contains("model, Tamarack Radio");
            press(page, "Write 1 new row");
            screen.reloadUntil("main:has-text('All of it is written')");
            page.navigate(address + "models?kind=access-point");
            assertThat(text(page)).contains("TR-" + word);
            page.navigate(address + "models?kind=gateway");
            assertThat(text(page)).doesNotContain("TR-" + word);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aTechnicianReadsAndChangesNothing(int width) {
        Model model = catalogue.add(ModelDraft.plain("Tamarack Radio", "TR-" + word, DeviceKind.ACCESS_POINT));
        String technician = fixture.person(Role.TECHNICIAN, null);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "models");
            screen.check("catalogue-read");
            assertThat(text(page))
                    .contains("TR-" + word)
                    .doesNotContain("Add model")
                    .doesNotContain("dry run");
            page.navigate(address + "models/" + model.id);
            screen.check("catalogue-model-read");
            assertThat(page.locator("main input, main button").count()).isZero();
            page.navigate(address + "firmware-lines");
            screen.check("catalogue-lines-read");
            assertThat(page.locator("main input").count()).isZero();
            screen.complaints();
        }
        Browser browser = Browser.of(technician, FleetFixture.PASSWORD);
        for (String path : new String[] {"/models", "/models/" + model.id, "/firmware-lines"}) {
            assertThat(browser.post("/password", path, Map.of("name", "x")).statusCode())
                    .as(path)
                    .isEqualTo(403);
        }
        Browser viewer =
                fixture.browser(Role.VIEWER, places.place("Quillfeather").customerId());
        for (String path : new String[] {"/models", "/models/" + model.id, "/firmware-lines"}) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
    }
}
