package org.roundsman.notices;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.alarms.Severity;
import org.roundsman.audit.PlainTrail;
import org.roundsman.notices.send.WebhookPost;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.system.DataFolder;
import org.roundsman.system.Sealer;
import org.roundsman.system.SecretKey;

/** Webhooks against a real receiver over HTTP that fails, hangs and recovers. */
class WebhookDbTest {

    private record Got(String id, String time, String hmac, byte[] body) {}

    @TempDir
    Path folder;

    private final List<Got> got = new CopyOnWriteArrayList<>();
    private final CountDownLatch letGo = new CountDownLatch(1);
    private volatile int answer = 200;
    private NoticeFixture f;
    private HttpServer receiver;
    private Sealer sealer;
    private Webhooks webhooks;
    private SignedIn owner;

    @BeforeEach
    void aReceiver() throws IOException {
        f = new NoticeFixture("webhooks", TestConfig.usual());
        receiver = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        receiver.setExecutor(Executors.newCachedThreadPool());
        receiver.createContext("/hooks/7", this::receive);
        receiver.start();
        sealer = new Sealer(SecretKey.in(DataFolder.at(folder.resolve("data")).keyFile()));
        webhooks = new Webhooks(f.database, sealer, PlainTrail.on(f.database, f.clock), f.clock);
        long account = f.person(
                "wren",
                c -> new NoticeChoices(
                        false, "", c.severity(), c.events(), true, c.customers(), c.zone(), "", Digest.NONE, 7, 1));
        owner = new SignedIn(account, "wren", "Wren", Role.OWNER, Optional.empty(), false);
    }

    private void receive(HttpExchange exchange) throws IOException {
        byte[] body = exchange.getRequestBody().readAllBytes();
        got.add(new Got(
                exchange.getRequestHeaders().getFirst(Carriers.ID),
                exchange.getRequestHeaders().getFirst(Carriers.TIME),
                exchange.getRequestHeaders().getFirst(Carriers.HMAC),
                body));
        if (answer == 0) {
            await();
        }
        exchange.sendResponseHeaders(answer == 0 ? 200 : answer, -1);
        exchange.close();
    }

    private void await() {
        try {
            letGo.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @AfterEach
    void stop() {
        letGo.countDown();
        receiver.stop(0);
    }

    private String url() {
        return "http://127.0.0.1:" + receiver.getAddress().getPort() + "/hooks/7?room=noc";
    }

    private void run() {
        Surroundings at = f.surroundings();
        new Telling(at).run();
        Carriers carriers =
                new Carriers(f.database, null, new WebhookPost(Duration.ofSeconds(1), true), sealer, f.clock);
        Sending sending = new Sending(at, carriers, new Random(1));
        sending.claim(100).forEach(sending::attempt);
    }

    private void minutes(long minutes) {
        f.clock.forward(Duration.ofMinutes(minutes));
        run();
    }

    @Test
    void theReceiverCanTellThatItIsOursAndWhatItSays() throws Exception {
        Webhooks.Made made = webhooks.add(owner, "chat", url());
        f.raised(1, Severity.MAJOR);
        run();
        assertThat(got).hasSize(1);
        assertThat(got.get(0).hmac()).isEqualTo(independently(made.secret(), got.get(0)));
        assertThat(Long.parseLong(got.get(0).time())).isEqualTo(NoticeFixture.NOON.getEpochSecond());
        JsonNode body = new ObjectMapper().readTree(got.get(0).body());
        assertThat(body.get("id").asText()).isEqualTo(got.get(0).id());
        assertThat(body.get("event").asText()).isEqualTo("raise");
        assertThat(body.at("/facts/severity").asText()).isEqualTo("major");
        assertThat(body.at("/facts/impact/clients").asInt()).isEqualTo(40);
        assertThat(body.at("/facts/invented").asBoolean()).isTrue();
        assertThat(body.at("/links/The alarm").asText()).isEqualTo("https://roundsman.example/triage/alarms/1");
    }

    /** By javax.crypto alone, as the operations guide tells receivers to do it. */
    private static String independently(String secret, Got message) throws Exception {
        Mac mac = Mac.getInstance("HmacSHA256");
        mac.init(new SecretKeySpec(secret.getBytes(UTF_8), "HmacSHA256"));
        mac.update((message.time() + ".").getBytes(UTF_8));
        return HexFormat.of().formatHex(mac.doFinal(message.body()));
    }

    @Test
    void aReceiverThatFailsAndHangsGetsTheSameMessageUntilItTakesIt() throws Exception {
        Webhooks.Made made = webhooks.add(owner, "chat", url());
        f.raised(1, Severity.MAJOR);
        answer = 503;
        run();
        answer = 0;
        minutes(2);
        answer = 302;
        minutes(5);
        answer = 204;
        minutes(10);
        minutes(10);
        assertThat(got).hasSize(4);
        assertThat(got).extracting(Got::id).containsOnly(got.get(0).id());
        assertThat(got)
                .extracting(one -> new String(one.body(), UTF_8))
                .containsOnly(new String(got.get(0).body(), UTF_8));
        assertThat(got.get(3).time()).isNotEqualTo(got.get(0).time());
        assertThat(got.get(3).hmac()).isEqualTo(independently(made.secret(), got.get(3)));
        assertThat(f.outbox()).containsExactly("SENT raise");
    }

    @Test
    void aSecretIsKeptSealedAndRotatedAtOnce() throws Exception {
        Webhooks.Made made = webhooks.add(owner, "chat", url());
        assertThat(f.texts("select encode(secret, 'escape') from notice_webhook"))
                .noneMatch(s -> s.contains(made.secret()));
        Webhooks.Made fresh = webhooks.rotate(owner, made.webhook().id()).orElseThrow();
        assertThat(fresh.secret()).isNotEqualTo(made.secret());
        f.raised(1, Severity.MAJOR);
        run();
        assertThat(got.get(0).hmac()).isEqualTo(independently(fresh.secret(), got.get(0)));
        assertThat(f.texts("select changes::text from audit_entry")).noneMatch(s -> s.contains(fresh.secret()));
        assertThat(f.texts("select action || ' ' || subject from audit_entry order by id"))
                .containsExactly("added webhook", "changed webhook");
    }

    @Test
    void nobodyElseReachesItButTheOwner() {
        long id = webhooks.add(owner, "chat", url()).webhook().id();
        SignedIn other = new SignedIn(f.person("orrin"), "orrin", "Orrin", Role.TECHNICIAN, Optional.empty(), false);
        assertThat(webhooks.seenBy(other)).isEmpty();
        assertThat(webhooks.rotate(other, id)).isEmpty();
        assertThat(webhooks.remove(other, id)).isFalse();
        long theirs = webhooks.add(other, "chat", url()).webhook().id();
        assertThat(webhooks.seenBy(owner)).hasSize(2);
        assertThat(webhooks.remove(owner, theirs)).isTrue();
    }

    @Test
    void aRemovedWebhookGivesItsMessagesUp() {
        long id = webhooks.add(owner, "chat", url()).webhook().id();
        f.raised(1, Severity.MAJOR);
        answer = 500;
        run();
        webhooks.remove(owner, id);
        minutes(5);
        assertThat(f.outbox()).containsExactly("DEAD raise");
    }

    @Test
    void addressesThatAreNoneAreRefused() {
        for (String url : List.of(
                "ftp://chat.example/", "chat.example", "https://a:b@chat.example/", "http:///x", "https://x/#y")) {
            assertThatThrownBy(() -> webhooks.add(owner, "chat", url)).isInstanceOf(NoticeRejected.class);
        }
        assertThatThrownBy(() -> webhooks.add(owner, " ", url())).isInstanceOf(NoticeRejected.class);
        for (int i = 1; i <= 5; i++) {
            webhooks.add(owner, "hook " + i, url());
        }
        assertThatThrownBy(() -> webhooks.add(owner, "one more", url())).hasMessageContaining("5 webhooks");
    }
}
