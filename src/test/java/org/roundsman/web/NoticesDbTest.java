package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Notices by pages and the API of the running service: choices, webhooks, test messages, messages that were given up. */
@QuarkusTest
class NoticesDbTest {

    private static final Pattern ONCE = Pattern.compile("id=\"once\">([^<]+)<");

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    private static Map<String, Object> choices() {
        return Map.of(
                "mailAddress", "wren@fernhollow.example",
                "severity", "minor",
                "events", "raise",
                "every", "yes",
                "zone", "Europe/Berlin",
                "hours", "Mon-Fri 08:00-18:00",
                "digest", "weekly",
                "digestHour", "7",
                "digestWeekday", "5");
    }

    private static Response post(Browser browser, String form, String path, Map<String, ?> fields) {
        return browser.send(path, browser.token(form), Map.copyOf(strings(fields)));
    }

    private static Map<String, String> strings(Map<String, ?> fields) {
        return fields.entrySet().stream().collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, e -> e.getValue()
                .toString()));
    }

    @Test
    void aPersonChoosesAndIsToldWhatIsWrong() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String page = browser.get("/notices").asString();
        assertThat(page).contains("No mail server is set up");
        assertThat(post(browser, "/notices", "/notices", choices()).statusCode())
                .isEqualTo(303);
        assertThat(browser.get("/notices").asString()).contains("Mon-Fri 08:00-18:00", "wren@fernhollow.example");
        Map<String, Object> wrong = new java.util.HashMap<>(choices());
        wrong.put("hours", "at night");
        wrong.put("mailAddress", "nobody");
        wrong.put("zone", "Middle/Earth");
        Response answer = post(browser, "/notices", "/notices", wrong);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.asString()).contains("There is no time zone of that name", "at night");
        wrong.put("zone", "Europe/Berlin");
        assertThat(post(browser, "/notices", "/notices", wrong).asString())
                .contains("cannot be read", "This is no mail address");
    }

    @Test
    void aViewerHasNoNoticesAndAnAccountManagerNoWebhooks() {
        Browser viewer =
                fixture.browser(Role.VIEWER, fixture.place("Quillfeather").customerId());
        assertThat(viewer.get("/notices").statusCode()).isEqualTo(403);
        Browser manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
        assertThat(manager.get("/notices").statusCode()).isEqualTo(200);
        for (String path : List.of("/notices/webhooks", "/notices/outbox", "/notices/escalation")) {
            assertThat(manager.get(path).statusCode()).as(path).isEqualTo(403);
        }
        assertThat(fixture.browser(Role.TECHNICIAN, null)
                        .get("/notices/escalation")
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void aTestMessageReachesAWebhookAndOneThatIsRefusedForGoodIsShownAndSentAgain() throws IOException {
        List<String> got = new CopyOnWriteArrayList<>();
        int[] status = {410};
        HttpServer receiver = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        receiver.createContext("/", exchange -> {
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            if (body.contains("\"event\":\"test\"")) { // alarms of other tests in the same service come here as well
                got.add(body);
            }
            exchange.sendResponseHeaders(status[0], -1);
            exchange.close();
        });
        receiver.start();
        try {
            Browser owner = fixture.browser(Role.OWNER, null);
            String url = "http://127.0.0.1:" + receiver.getAddress().getPort() + "/hook";
            Map<String, String> hook = Map.of("name", "gong-" + System.nanoTime(), "url", url);
            Response made = post(owner, "/notices/webhooks", "/notices/webhooks", hook);
            Matcher once = ONCE.matcher(made.asString());
            assertThat(once.find()).isTrue();
            assertThat(owner.get("/notices/webhooks").asString())
                    .doesNotContain(once.group(1))
                    .contains(url);
            assertThat(post(owner, "/notices", "/notices/test", Map.of()).asString())
                    .contains("on its way, by one way");
            String dead = hook.get("name");
            await().untilAsserted(() -> assertThat(deadLine(owner, dead)).contains("410 Gone"));
            assertThat(got).hasSize(1);
            status[0] = 204;
            Matcher again =
                    Pattern.compile("/notices/messages/(\\d+)/send-again").matcher(deadLine(owner, dead));
            assertThat(again.find()).isTrue();
            assertThat(post(owner, "/notices", again.group(), Map.of()).statusCode())
                    .isEqualTo(303);
            await().untilAsserted(() -> assertThat(got).hasSize(2));
            assertThat(got.get(1)).isEqualTo(got.get(0));
        } finally {
            receiver.stop(0);
        }
    }

    /** The row of the page that tells of the test message to that webhook. */
    private static String deadLine(Browser owner, String webhook) {
        return owner.get("/notices/outbox?state=dead").asString().lines().reduce((a, b) -> a + b).stream()
                .flatMap(all -> java.util.Arrays.stream(all.split("<tr ")))
                .filter(row -> row.contains(webhook) && row.contains("A test of your notices"))
                .findFirst()
                .orElse("");
    }

    @Test
    void theOwnerSetsAndRemovesAChain() {
        Browser owner = fixture.browser(Role.OWNER, null);
        long customer = fixture.place("Thistledown").customerId();
        String member = Pattern.compile("name=\"step1\" value=\"(\\d+)\"")
                .matcher(owner.get("/notices/escalation").asString())
                .results()
                .findFirst()
                .orElseThrow()
                .group(1);
        Map<String, String> chain = Map.of(
                "customer",
                String.valueOf(customer),
                "severity",
                "major",
                "minutes",
                "20",
                "step1",
                member,
                "step3",
                member);
        assertThat(post(owner, "/notices/escalation", "/notices/escalation", chain)
                        .statusCode())
                .isEqualTo(303);
        assertThat(owner.get("/notices/escalation").asString()).contains("from major, every 20 minutes");
        Map<String, String> empty = Map.of("customer", "", "severity", "major", "minutes", "0");
        assertThat(post(owner, "/notices/escalation", "/notices/escalation", empty)
                        .statusCode())
                .isEqualTo(422);
    }

    @Test
    void programsReadAndChangeTheirPersonsChoices() {
        String token = places.token(Role.TECHNICIAN, null, Set.of(TokenScope.READ, TokenScope.CHANGE), null);
        Api api = Api.with(token);
        JsonPath before = require(200, api.get("/notices/choices"));
        assertThat(before.getString("severity")).isEqualTo("major");
        JsonPath after = require(
                200,
                api.patch(
                        "/notices/choices",
                        "{\"severity\":\"critical\",\"events\":[\"clear\"],\"timeZone\":\"Europe/Oslo\"}"));
        assertThat(after.getString("severity")).isEqualTo("critical");
        assertThat(after.getList("events")).containsExactly("clear");
        assertThat(after.getString("timeZone")).isEqualTo("Europe/Oslo");
        JsonPath refused =
                require(422, api.patch("/notices/choices", "{\"mail\":true,\"hours\":\"never\",\"digestHour\":24}"));
        assertThat(refused.getList("errors.field")).containsExactlyInAnyOrder("mailAddress", "hours", "digestHour");
        assertThat(require(200, api.get("/notices/choices")).getBoolean("mail")).isFalse();
        require(200, api.get("/notices/messages?state=dead&size=2"));
        require(422, api.get("/notices/messages?state=lost"));
        require(404, api.post("/notices/messages/999999999/send-again"));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }
}
