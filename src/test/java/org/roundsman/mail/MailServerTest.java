package org.roundsman.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Mails handed to a real SMTP server, and to scripted ones that refuse and fall silent. */
@Timeout(90)
class MailServerTest {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-04T11:00:00Z"), ZoneOffset.UTC);
    private static final Letter LETTER = new Letter(
            "wren@fernhollow.example",
            "Does not answer: Gate AP at Pier Nörd",
            "Plain wörds.\n",
            "<p>Rich wörds.</p>",
            "7f1c",
            Optional.of("6e0b"),
            "notices");

    @TempDir
    Path folder;

    private GreenMail green;

    /** Settings of a test. */
    record Settings(
            int port, Privacy privacy, Optional<String> user, Optional<String> password, Optional<Path> passwordFile)
            implements MailSettings {

        static Settings open(int port) {
            return new Settings(port, Privacy.NONE, Optional.empty(), Optional.empty(), Optional.empty());
        }

        @Override
        public Optional<String> host() {
            return Optional.of("127.0.0.1");
        }

        @Override
        public Optional<Path> trustedCertificates() {
            return Optional.empty();
        }

        @Override
        public Optional<String> from() {
            return Optional.of("rounds@fernhollow.example");
        }

        @Override
        public String fromName() {
            return "Roundsman";
        }

        @Override
        public Duration timeout() {
            return Duration.ofSeconds(2);
        }
    }

    private GreenMail start(String protocol) {
        green = new GreenMail(new ServerSetup(0, "127.0.0.1", protocol).dynamicPort());
        green.start();
        return green;
    }

    @AfterEach
    void stop() {
        if (green != null) {
            green.stop();
        }
    }

    private static MailFailure failure(MailSettings settings, Letter letter) {
        MailFailure failure =
                catchThrowableOfType(MailFailure.class, () -> new MailServer(settings, CLOCK).send(letter));
        assertThat(failure).isNotNull();
        return failure;
    }

    @Test
    void aMailArrivesWithItsHeadersAndBothTexts() throws Exception {
        MailServer server = new MailServer(Settings.open(start("smtp").getSmtp().getPort()), CLOCK);
        server.send(LETTER);
        server.send(LETTER);
        MimeMessage[] got = green.getReceivedMessages();
        assertThat(got).hasSize(2);
        MimeMessage mail = got[0];
        assertThat(mail.getSubject()).isEqualTo("Does not answer: Gate AP at Pier Nörd");
        assertThat(mail.getFrom()[0].toString()).isEqualTo("Roundsman <rounds@fernhollow.example>");
        assertThat(mail.getAllRecipients()[0].toString()).isEqualTo("wren@fernhollow.example");
        assertThat(mail.getHeader("Message-ID")).containsExactly("<7f1c@fernhollow.example>");
        assertThat(got[1].getHeader("Message-ID"))
                .as("a repeat is the same mail")
                .containsExactly("<7f1c@fernhollow.example>");
        assertThat(mail.getHeader("In-Reply-To")).containsExactly("<6e0b@fernhollow.example>");
        assertThat(mail.getHeader("References")).containsExactly("<6e0b@fernhollow.example>");
        assertThat(mail.getHeader("Auto-Submitted")).as("RFC 3834").containsExactly("auto-generated");
        assertThat(mail.getHeader("List-Id")).as("RFC 2919").containsExactly("<notices.fernhollow.example>");
        assertThat(mail.getSentDate().toInstant()).isEqualTo(CLOCK.instant());
        MimeMultipart both = (MimeMultipart) mail.getContent();
        assertThat(both.getContentType()).startsWith("multipart/alternative");
        assertThat(both.getBodyPart(0).getContent().toString().strip()).isEqualTo("Plain wörds.");
        assertThat(both.getBodyPart(1).getContent().toString().strip()).isEqualTo("<p>Rich wörds.</p>");
    }

    @Test
    void aSignInIsMadeWithThePasswordOfTheFile() throws Exception {
        int port = start("smtp").getSmtp().getPort();
        green.setUser("rounds@fernhollow.example", "rounds", "heron-lantern-42");
        Path file = Files.writeString(folder.resolve("mail.password"), "heron-lantern-42\n");
        Settings right = new Settings(
                port, MailSettings.Privacy.NONE, Optional.of("rounds"), Optional.empty(), Optional.of(file));
        new MailServer(right, CLOCK).send(LETTER);
        assertThat(green.getReceivedMessages()).hasSize(1);
        Settings wrong = new Settings(
                port,
                MailSettings.Privacy.NONE,
                Optional.of("rounds"),
                Optional.of("wrong-secret-77"),
                Optional.empty());
        MailFailure failure = failure(wrong, LETTER);
        assertThat(failure).hasMessageContaining("refused our user or password");
        assertThat(failure.getMessage()).doesNotContain("wrong-secret-77");
        assertThat(failure.permanent())
                .as("it is mended by changing the settings")
                .isFalse();
    }

    /** The server's certificate is its own and not of this name: RFC 8314 section 3, RFC 6125. */
    @ParameterizedTest
    @CsvSource({"smtps, TLS", "smtp, STARTTLS"})
    void nothingIsSentWhereTheConnectionCannotBeTrusted(String protocol, MailSettings.Privacy privacy) {
        start(protocol);
        int port = protocol.equals("smtps")
                ? green.getSmtps().getPort()
                : green.getSmtp().getPort();
        Settings settings =
                new Settings(port, privacy, Optional.of("rounds"), Optional.of("heron-lantern-42"), Optional.empty());
        MailFailure failure = failure(settings, LETTER);
        assertThat(failure.uncertain()).isFalse();
        assertThat(green.getReceivedMessages()).isEmpty();
    }

    /** RFC 5321, section 4.2.1: 5yz is for good, 4yz for now. */
    @ParameterizedTest
    @CsvSource({"550 5.1.1 No such user, true", "450 4.2.1 Try later, false"})
    void theServersRefusalSaysWhetherToTryAgain(String reply, boolean permanent) throws IOException {
        try (ScriptedSmtp server = ScriptedSmtp.answering("RCPT", reply)) {
            MailFailure failure = failure(Settings.open(server.port()), LETTER);
            assertThat(failure.permanent()).isEqualTo(permanent);
            assertThat(failure.uncertain()).isFalse();
            assertThat(failure).hasMessageContaining(reply.substring(0, 3));
        }
    }

    @Test
    void aServerThatFallsSilentAfterTheMailMayHaveTakenIt() throws IOException {
        try (ScriptedSmtp server = ScriptedSmtp.silentAfter(".")) {
            MailFailure failure = failure(Settings.open(server.port()), LETTER);
            assertThat(failure.uncertain()).isTrue();
            assertThat(failure.permanent()).isFalse();
        }
    }

    @Test
    void aServerThatSaysNothingOrIsNotThereHasTakenNothing() throws IOException {
        try (ServerSocket mute = new ServerSocket(0)) {
            MailFailure failure = failure(Settings.open(mute.getLocalPort()), LETTER);
            assertThat(failure.uncertain()).isFalse();
            assertThat(failure.permanent()).isFalse();
        }
        assertThat(failure(Settings.open(1), LETTER).permanent()).isFalse();
    }

    @Test
    void aLineBreakInASubjectMakesNoHeader() throws Exception {
        MailServer server = new MailServer(Settings.open(start("smtp").getSmtp().getPort()), CLOCK);
        server.send(new Letter(
                "wren@fernhollow.example",
                "One\r\nBcc: all@fernhollow.example",
                "t",
                "h",
                "9a",
                Optional.empty(),
                "notices"));
        MimeMessage mail = green.getReceivedMessages()[0];
        assertThat(mail.getHeader("Bcc")).isNull();
        assertThat(mail.getSubject()).isEqualTo("One Bcc: all@fernhollow.example");
        assertThat(mail.getHeader("In-Reply-To")).isNull();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "wren",
                "wren@",
                "a b@c.example",
                "Wren <w@c.example>",
                "a@b.example,c@d.example",
                "a@b.example\r\nX: y",
                "a@@b.example"
            })
    void whatIsNoSingleAddressIsRefused(String text) {
        assertThat(MailAddress.valid(text)).isFalse();
        assertThat(MailAddress.valid("wren.tolliver+noc@fernhollow.example")).isTrue();
    }
}
