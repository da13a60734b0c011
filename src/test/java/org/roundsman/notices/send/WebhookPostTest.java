package org.roundsman.notices.send;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.time.Duration;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One POST against receivers that answer oddly, slowly or endlessly, and addresses that lead where they must not. */
@Timeout(60)
class WebhookPostTest {

    private interface Manner {
        void answer(OutputStream out) throws IOException, InterruptedException;
    }

    private final WebhookPost post = new WebhookPost(Duration.ofMillis(700), true);
    private ServerSocket server;
    private volatile Manner manner;

    @BeforeEach
    void aServer() throws IOException {
        server = new ServerSocket(0, 10, InetAddress.getByName("127.0.0.1"));
        Thread thread = new Thread(this::serve, "odd-receiver");
        thread.setDaemon(true);
        thread.start();
    }

    private void serve() {
        while (!server.isClosed()) {
            try (Socket socket = server.accept()) {
                InputStream in = socket.getInputStream();
                int bodyEnd = 0;
                while (bodyEnd != '}') {
                    bodyEnd = in.read();
                }
                manner.answer(socket.getOutputStream());
            } catch (SocketException e) {
                // the client hung up, or the test is over
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
    }

    private void send() throws SendFailure {
        Target target = Target.of("http://127.0.0.1:" + server.getLocalPort() + "/x");
        post.send(target, Map.of("Roundsman-Message", "1"), "{}".getBytes(US_ASCII));
    }

    private SendFailure failure(Manner odd) {
        manner = odd;
        SendFailure failure = catchThrowableOfType(SendFailure.class, this::send);
        assertThat(failure).isNotNull();
        return failure;
    }

    private static Manner say(String words) {
        return out -> out.write(words.getBytes(US_ASCII));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "HTTP/1.1 200 OK\r\n\r\n",
                "HTTP/1.1 204\r\n\r\n",
                "HTTP/1.0 202 Accepted\r\nX: y\r\n\r\nbody",
                "HTTP/1.1 103 Early Hints\r\nLink: </a>\r\n\r\nHTTP/1.1 200 OK\r\n\r\n"
            })
    void anyTwoHundredCounts(String answer) throws SendFailure {
        manner = say(answer);
        send();
    }

    /** RFC 9110: 410 says that it is gone for good; whatever else is refused may be mended. */
    @ParameterizedTest
    @CsvSource({"301, false", "401, false", "404, false", "410, true", "429, false", "500, false", "503, false"})
    void allElseIsARefusal(int status, boolean permanent) {
        SendFailure failure = failure(say("HTTP/1.1 " + status + " No\r\nLocation: http://127.0.0.1:9/\r\n\r\n"));
        assertThat(failure).hasMessageContaining(status + " No");
        assertThat(failure.permanent()).isEqualTo(permanent);
        assertThat(failure.uncertain()).isFalse();
    }

    @Test
    void silenceEndsInTimeAndMayMeanThatItArrived() {
        SendFailure failure = failure(out -> Thread.sleep(5_000));
        assertThat(failure).hasMessageContaining("no answer within");
        assertThat(failure.uncertain()).isTrue();
        assertThat(failure.permanent()).isFalse();
    }

    @Test
    void oneOctetAtATimeEndsInTimeAsWell() {
        SendFailure failure = failure(out -> {
            for (int i = 0; i < 50; i++) {
                out.write('H');
                out.flush();
                Thread.sleep(100);
            }
        });
        assertThat(failure).hasMessageContaining("no answer within");
    }

    @Test
    void anEndlessAnswerIsNotReadToItsEnd() {
        SendFailure failure = failure(out -> {
            byte[] block = "x".repeat(65_536).getBytes(US_ASCII);
            for (int i = 0; i < 1_000; i++) {
                out.write(block);
            }
        });
        assertThat(failure).hasMessageContaining("no HTTP");
    }

    @Test
    void aConnectionThatIsClosedMayHaveTakenItAndARefusedOneHasNot() throws IOException {
        assertThat(failure(out -> {}).uncertain()).isTrue();
        ServerSocket gone = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"));
        Target nobody = Target.of("http://127.0.0.1:" + gone.getLocalPort() + "/x");
        gone.close();
        SendFailure refused = catchThrowableOfType(SendFailure.class, () -> post.send(nobody, Map.of(), new byte[0]));
        assertThat(refused.uncertain()).isFalse();
        assertThat(refused).hasMessageContaining("connection failed");
    }

    /** Loopback (RFC 1122, RFC 4291), link-local (RFC 3927, RFC 4291), unspecified, multicast, and IPv4 inside of IPv6. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "http://127.0.0.1/",
                "http://127.3.4.5/",
                "http://localhost/",
                "http://[::1]/",
                "http://[::ffff:127.0.0.1]/",
                "http://[64:ff9b::7f00:1]/",
                "http://169.254.169.254/latest",
                "http://[fe80::1]/",
                "http://0.0.0.0/",
                "http://[::]/",
                "http://224.0.0.1/",
                "https://2130706433/"
            })
    void addressesOfThisMachineAndOfTheLinkAreNotReached(String address) {
        WebhookPost careful = new WebhookPost(Duration.ofSeconds(1), false);
        SendFailure failure =
                catchThrowableOfType(SendFailure.class, () -> careful.send(Target.of(address), Map.of(), new byte[0]));
        assertThat(failure).isNotNull();
        assertThat(failure.uncertain()).isFalse();
        assertThat(failure.getMessage()).containsAnyOf("not allowed", "not known");
    }

    @Test
    void thisMachinesOwnAddressesAreNotReachedEither() throws Exception {
        WebhookPost careful = new WebhookPost(Duration.ofSeconds(1), false);
        var own = java.util.Collections.list(java.net.NetworkInterface.getNetworkInterfaces()).stream()
                .flatMap(java.net.NetworkInterface::inetAddresses)
                .filter(one -> one instanceof java.net.Inet4Address)
                .toList();
        assertThat(own).isNotEmpty();
        for (InetAddress one : own) {
            SendFailure failure = catchThrowableOfType(
                    SendFailure.class,
                    () -> careful.send(Target.of("http://" + one.getHostAddress() + "/"), Map.of(), new byte[0]));
            assertThat(failure).hasMessageContaining("not allowed");
        }
    }

    @Test
    void pausesDoubleUpToTheLongestAndAreScattered() {
        Backoff backoff = new Backoff(Duration.ofSeconds(30), Duration.ofHours(1), new Random(3));
        for (int attempt = 1; attempt <= 100; attempt++) {
            double plain = Math.min(3_600, 30 * Math.pow(2, attempt - 1));
            assertThat(backoff.after(attempt).toMillis() / 1_000.0).isBetween(plain * 0.749, plain * 1.251);
        }
        assertThat(java.util.stream.IntStream.range(0, 50)
                        .mapToObj(i -> backoff.after(5))
                        .distinct()
                        .count())
                .isGreaterThan(30);
    }
}
