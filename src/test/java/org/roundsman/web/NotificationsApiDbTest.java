package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.snmp.SentByNetSnmp;

/** Who sends notifications in vain, with net-snmp's snmptrap as the sender. */
@QuarkusTest
class NotificationsApiDbTest {

    /** coldStart of SNMPv2-MIB (RFC 3418). */
    private static final String COLD_START = "1.3.6.1.6.3.1.1.5.1";

    @Inject
    MarkedPlaces places;

    private Api api;

    @BeforeEach
    void token() {
        api = Api.with(places.token(Role.TECHNICIAN, null, Set.of(TokenScope.READ), null));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    private int send(String from, int port) {
        return SentByNetSnmp.run("snmptrap", from, port, List.of("-v", "2c", "-c", "nobody"), "4711", COLD_START)
                .exit();
    }

    @Test
    void sendersThatNobodyKnowsAreCounted() {
        JsonPath receiver = require(200, api.get("/notifications/receiver"));
        assertThat(receiver.getString("state")).isEqualTo("listening");
        assertThat(receiver.getString("since")).isNotNull();
        int port = receiver.getInt("port");
        for (String from : List.of("127.97.3.1", "127.97.3.1", "127.97.3.2")) {
            assertThat(send(from, port)).isZero();
        }
        String first = "items.find { it.address == '127.97.3.1' }";
        String second = "items.find { it.address == '127.97.3.2' }";
        await().untilAsserted(() -> {
            JsonPath senders = require(200, api.get("/notifications/unknown-senders?size=500"));
            assertThat(senders.getMap(first)).containsEntry("messages", 2).containsEntry("reason", "unknown-sender");
            assertThat(senders.getMap(second)).containsEntry("messages", 1).containsEntry("version", 2);
        });
        Set<String> seen = new HashSet<>();
        String next = "/api/v1/notifications/unknown-senders?size=1";
        while (next != null) {
            JsonPath piece =
                    require(200, api.request().urlEncodingEnabled(false).get(next));
            assertThat(piece.getList("items")).hasSize(1);
            assertThat(seen.add(piece.getString("items[0].address") + piece.getString("items[0].reason")))
                    .as("each once")
                    .isTrue();
            next = piece.getString("next");
        }
        assertThat(seen).contains("127.97.3.1unknown-sender", "127.97.3.2unknown-sender");
    }

    /** OWASP ASVS 5.0, 8.2.1 and 8.4.1: addresses of strangers are no single customer's. */
    @Test
    void viewersAndNarrowedTokensAreKeptOut() {
        MarkedPlaces.Place place = places.place("Saltmarsh");
        Api viewer = Api.with(place.viewerToken());
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), place.customerId()));
        for (String path : List.of("/notifications/receiver", "/notifications/unknown-senders")) {
            require(403, viewer.get(path));
            require(403, narrowed.get(path));
        }
    }
}
