package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** A model that moves to another firmware line takes no withdrawal with it: that is said before it is saved, and noted. */
@QuarkusTest
class ModelMovePageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    private String name;
    private long from;
    private long to;
    private long model;

    @BeforeEach
    void aModelOfWhichADeviceRunsWhatIsWithdrawn() {
        FleetFixture.Place place = fixture.place("Saltmarsh");
        String word = place.customer().replace("Saltmarsh ", "");
        name = "TR-" + word;
        from = places.number("insert into firmware_line (name) values ('Indoor " + word + "') returning id");
        to = places.number("insert into firmware_line (name) values ('Outdoor " + word + "') returning id");
        model = places.number("insert into model (maker, name, kind, firmware_line_id) values ('Tamarack Radio', '"
                + name + "', 'ACCESS_POINT', " + from + ") returning id");
        places.tell("update device set model_id = " + model + " where id = " + place.deviceId());
        places.tell("insert into device_fact (device_id, fact, value, since) values (" + place.deviceId()
                + ", 'FIRMWARE', '6.1.0', now())");
        withdraw(from);
    }

    private void withdraw(long line) {
        places.tell("insert into firmware_release (line_id, version, stand, reason, withdrawn_on) values (" + line
                + ", '6.1.0', 'WITHDRAWN', 'it restarts under load', date '2026-02-01')");
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private long lineNow() {
        return places.number("select firmware_line_id from model where id = " + model);
    }

    private long noted(String via) {
        return places.number("select count(*) from audit_entry where action = 'lifted' and subject_id = " + model
                + " and subject = 'withdrawal of firmware' and via = '" + via
                + "' and changes @> '[{\"field\": \"devices no longer withdrawn\", \"new\": \"1\"}]'");
    }

    private static void save(Page page) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName("Save").setExact(true))
                .click();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aMoveThatLiftsAWithdrawalIsAskedAboutFirst(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.ACCOUNT_MANAGER, null), FleetFixture.PASSWORD);
            page.navigate(address + "models/" + model);
            assertThat(page.locator("input[name=lift]").count()).isZero();
            page.selectOption("#firmwareLineId", String.valueOf(to));
            save(page);
            assertThat(page.locator("main").innerText())
                    .contains("this lifts a withdrawal: 1 device of this model would no longer count as withdrawn")
                    .contains("6.1.0 was withdrawn on 2026-02-01: it restarts under load");
            screen.check("model-move-asked");
            assertThat(lineNow()).isEqualTo(from);
            page.check("input[name=lift]");
            page.selectOption("#firmwareLineId", "");
            save(page);
            assertThat(page.locator("main").innerText())
                    .as("agreed to another move")
                    .contains("lifts a withdrawal");
            assertThat(lineNow()).isEqualTo(from);
            page.selectOption("#firmwareLineId", String.valueOf(to));
            save(page);
            page.check("input[name=lift]");
            save(page);
            assertThat(page.url()).contains("/models#model-");
            assertThat(lineNow()).isEqualTo(to);
            assertThat(noted("PAGE")).isEqualTo(1);
            screen.complaints("422");
        }
    }

    @Test
    void aMoveToALineThatWithdrewItAsWellIsSavedAtOnce() {
        withdraw(to);
        Response saved = fixture.browser(Role.OWNER, null)
                .post(
                        "/models/" + model,
                        "/models/" + model,
                        Map.of(
                                "maker",
                                "Tamarack Radio",
                                "name",
                                name,
                                "kind",
                                "ACCESS_POINT",
                                "firmwareLineId",
                                String.valueOf(to)));
        assertThat(saved.statusCode()).as(saved.asString()).isEqualTo(303);
        assertThat(lineNow()).isEqualTo(to);
        assertThat(noted("PAGE")).isZero();
    }

    @Test
    void aMoveByAProgramIsNotedToo() {
        Api manager = Api.with(places.token(Role.ACCOUNT_MANAGER, null, EnumSet.allOf(TokenScope.class), null));
        assertThat(manager.patch("/models/" + model, "{\"mount\":\"wall\"}").statusCode())
                .isEqualTo(200);
        assertThat(noted("API")).isZero();
        assertThat(manager.patch("/models/" + model, "{\"firmwareLineId\":null}")
                        .statusCode())
                .isEqualTo(200);
        assertThat(noted("API")).isEqualTo(1);
    }
}
