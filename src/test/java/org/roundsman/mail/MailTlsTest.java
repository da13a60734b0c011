package org.roundsman.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** TLS from the first octet (RFC 8314) to a server with a certificate of one's own, made by keytool. */
@Timeout(120)
class MailTlsTest {

    private static final String PASSWORD = "changeit";

    @TempDir
    Path folder;

    private GreenMail green;
    private TlsFront front;

    @BeforeEach
    void aServerWithACertificate() throws Exception {
        Path store = folder.resolve("server.p12");
        keytool(
                "-genkeypair",
                "-alias",
                "server",
                "-keyalg",
                "EC",
                "-dname",
                "CN=mail.fernhollow.example",
                "-ext",
                "SAN=ip:127.0.0.1",
                "-storetype",
                "PKCS12",
                "-keystore",
                store.toString(),
                "-storepass",
                PASSWORD);
        keytool(
                "-exportcert",
                "-rfc",
                "-alias",
                "server",
                "-keystore",
                store.toString(),
                "-storepass",
                PASSWORD,
                "-file",
                folder.resolve("server.pem").toString());
        green = new GreenMail(new ServerSetup(0, "127.0.0.1", "smtp").dynamicPort());
        green.start();
        front = new TlsFront(store, PASSWORD, green.getSmtp().getPort());
    }

    private static void keytool(String... arguments) throws IOException, InterruptedException {
        List<String> command = new java.util.ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
        command.addAll(Arrays.asList(arguments));
        assertThat(new ProcessBuilder(command).start().waitFor()).isZero();
    }

    @AfterEach
    void stop() throws IOException {
        front.close();
        green.stop();
    }

    private static MailServer server(int port, Optional<Path> trusted) {
        return new MailServer(new LocalMail(port, MailSettings.Privacy.TLS, trusted), Clock.systemUTC());
    }

    @Test
    void aMailGoesToAServerWhoseCertificateIsTrustedAndToNoOther() throws Exception {
        Letter letter = new Letter("wren@fernhollow.example", "s", "t", "h", "1", Optional.empty(), "notices");
        int port = front.port();
        MailServer doubtful = server(port, Optional.empty());
        assertThat(catchThrowableOfType(MailFailure.class, () -> doubtful.send(letter)))
                .isNotNull();
        assertThat(green.getReceivedMessages()).isEmpty();
        server(port, Optional.of(folder.resolve("server.pem"))).send(letter);
        assertThat(green.getReceivedMessages()).hasSize(1);
    }
}
