package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.user.GreenMailUser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.Flags;
import jakarta.mail.Folder;
import jakarta.mail.Message;
import jakarta.mail.Session;
import jakarta.mail.Store;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.search.FlagTerm;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.dispatch.ReportMails.Line;
import org.roundsman.dispatch.ReportMails.State;
import org.roundsman.dispatch.work.Bounced;
import org.roundsman.dispatch.work.Post;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.mail.BounceReader;
import org.roundsman.mail.LocalMail;
import org.roundsman.mail.MailServer;
import org.roundsman.mail.ScriptedSmtp;

/** Reports go out over a real SMTP server, and what comes back is read from a real mailbox. */
@Timeout(90)
class ReportPostDbTest {

    private static final String OWNER = "owner@pebblegate.example";

    @TempDir
    Path folder;

    private GreenMail green;
    private DispatchFixture at;
    private ReportMails mails;
    private long customer;

    @BeforeEach
    void servers() {
        green = new GreenMail(new ServerSetup[] {
            new ServerSetup(0, "127.0.0.1", "smtp").dynamicPort(), new ServerSetup(0, "127.0.0.1", "imap").dynamicPort()
        });
        green.start();
        at = DispatchFixture.on("report_post");
        mails = new ReportMails(at.parts);
        customer = at.customer("Pebblegate Dental", "Europe/London");
    }

    @AfterEach
    void stop() {
        green.stop();
    }

    private Post post(int port) {
        return at.post(new MailServer(LocalMail.open(port), at.clock)::send);
    }

    private Post post() {
        return post(green.getSmtp().getPort());
    }

    private long onItsWay(String... recipients) {
        at.plan(customer, recipients);
        long id = at.built(customer);
        at.desk.approve(id);
        at.desk.send(id);
        at.finish();
        return id;
    }

    @Test
    void eachRecipientGetsAMailWithTheDocumentAttached() throws Exception {
        long id = onItsWay(OWNER, "desk@pebblegate.example");
        Post post = post();
        assertThat(post.step()).isTrue();
        assertThat(at.report(id).state()).as("one was taken").isEqualTo(ReportState.SENT);
        assertThat(post.step()).isTrue();
        assertThat(post.step()).isFalse();
        MimeMessage[] got = green.getReceivedMessages();
        assertThat(got)
                .extracting(mail -> mail.getAllRecipients()[0].toString())
                .containsExactlyInAnyOrder(OWNER, "desk@pebblegate.example");
        assertThat(got[0].getSubject()).isEqualTo("Wi-Fi of Pebblegate Dental");
        assertThat(got[0].getHeader("List-Id")).containsExactly("<reports.fernhollow.example>");
        MimeMultipart all = (MimeMultipart) got[0].getContent();
        assertThat(all.getContentType()).as("RFC 2046, section 5.1.3").startsWith("multipart/mixed");
        assertThat(all.getCount()).isEqualTo(2);
        assertThat(all.getBodyPart(0).getContentType()).startsWith("multipart/alternative");
        MimeBodyPart file = (MimeBodyPart) all.getBodyPart(1);
        assertThat(file.getContentType()).startsWith("application/pdf");
        assertThat(file.getDisposition()).isEqualTo("attachment");
        assertThat(file.getFileName()).isEqualTo("report-2026-10-01-1.pdf");
        byte[] pdf = file.getInputStream().readAllBytes();
        assertThat(pdf).isEqualTo(at.shelf.pdf(CustomerScope.everyone(), id).orElseThrow());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document)).contains("Pebblegate Dental");
        }
    }

    @Test
    void aRefusedRecipientFailsAtOnceAndTheOthersGetTheirs() throws Exception {
        long id = onItsWay("gone@pebblegate.example", OWNER);
        try (ScriptedSmtp server = ScriptedSmtp.answering("RCPT TO:<gone@", "550 5.1.1 no such mailbox")) {
            Post post = post(server.port());
            assertThat(post.step()).isTrue();
            assertThat(at.report(id).state()).isEqualTo(ReportState.SENDING);
            assertThat(post.step()).isTrue();
            assertThat(post.step()).isFalse();
        }
        assertThat(mails.of(id)).extracting(Line::state).containsExactly(State.FAILED, State.SENT);
        assertThat(mails.of(id).get(0).why()).contains("550 5.1.1 no such mailbox");
        assertThat(at.report(id).state()).isEqualTo(ReportState.SENT);
    }

    @Test
    void whereAllAreRefusedTheReportFailsAndCanBeSentElsewhere() throws Exception {
        long id = onItsWay("gone@pebblegate.example");
        try (ScriptedSmtp server = ScriptedSmtp.answering("RCPT TO:<gone@", "550 5.1.1 no such mailbox")) {
            assertThat(post(server.port()).step()).isTrue();
        }
        KeptReport failed = at.report(id);
        assertThat(failed.state()).isEqualTo(ReportState.FAILED);
        assertThat(failed.failure()).contains("no recipient could be reached").contains("no such mailbox");
        at.desk.sendAgain(id, List.of(OWNER));
        assertThat(post().step()).isTrue();
        KeptReport sent = at.report(id);
        assertThat(sent.state()).isEqualTo(ReportState.SENT);
        assertThat(sent.prints()).as("the same document").isEqualTo(failed.prints());
        at.desk.sendAgain(id, List.of("accounts@pebblegate.example"));
        assertThat(post().step()).isTrue();
        assertThat(mails.of(id)).extracting(Line::state).containsExactly(State.FAILED, State.SENT, State.SENT);
        assertThat(at.report(id).sentAt()).isEqualTo(sent.sentAt());
    }

    @Test
    void aServerThatIsAwayIsTriedAgainLaterAndGivenUpInTheEnd() {
        long id = onItsWay(OWNER);
        Post away = post(1);
        assertThat(away.step()).isTrue();
        Line line = mails.of(id).get(0);
        assertThat(line.state()).isEqualTo(State.WAITING);
        assertThat(line.attempts()).isEqualTo(1);
        assertThat(Duration.between(at.clock.instant(), line.nextAt().orElseThrow()))
                .as("a minute, scattered by a quarter")
                .isBetween(Duration.ofSeconds(45), Duration.ofSeconds(75));
        assertThat(away.step()).as("not before").isFalse();
        at.clock.forward(Duration.ofHours(48));
        assertThat(away.step()).isTrue();
        assertThat(mails.of(id).get(0).state()).isEqualTo(State.FAILED);
        assertThat(at.report(id).state()).isEqualTo(ReportState.FAILED);
        at.desk.reopen(id);
        assertThat(at.report(id).state()).isEqualTo(ReportState.TO_REVIEW);
        assertThat(at.report(id).prints().pdf()).isEmpty();
    }

    @Test
    void anAttemptWithoutAKnownEndIsRepeatedAsTheSameMail() throws Exception {
        onItsWay(OWNER);
        try (ScriptedSmtp server = ScriptedSmtp.silentAfter(".")) {
            assertThat(post(server.port()).step()).isTrue();
        }
        assertThat(at.rows.number("select count(*) from report_mail where maybe_sent"))
                .isEqualTo(1);
        String key = key();
        at.clock.forward(Duration.ofMinutes(2));
        assertThat(post().step()).isTrue();
        assertThat(green.getReceivedMessages()[0].getHeader("Message-ID"))
                .containsExactly("<" + key + "@fernhollow.example>");
    }

    /** As after a crash: the attempt was begun, and nothing more is known of it. */
    @Test
    void anAttemptThatACrashCutShortIsRepeatedAfterAWhile() {
        onItsWay(OWNER);
        at.rows.run(
                "update report_mail set attempts = 1, maybe_sent = true, claimed_until = ?",
                at.clock.instant().plus(Duration.ofMinutes(5)));
        assertThat(post().step()).isFalse();
        at.clock.forward(Duration.ofMinutes(6));
        assertThat(post().step()).isTrue();
        assertThat(green.getReceivedMessages()).hasSize(1);
    }

    private String key() {
        return at.rows
                .one("select message_key::text from report_mail order by id limit 1", row -> row.getString(1))
                .orElseThrow();
    }

    @Test
    void aMailThatComesBackIsReadFromTheMailbox() throws Exception {
        GreenMailUser box = green.setUser("reports@fernhollow.example", "reports", "heron-lantern-42");
        long id = onItsWay(OWNER);
        assertThat(post().step()).isTrue();
        deliver(box, "Subject: A question\n\nWhat does page 3 mean?\n");
        deliver(box, notification(key(), "failed", "550 5.1.1 no such mailbox"));
        deliver(box, notification("00000000-0000-4000-8000-000000000000", "failed", "550 somebody else's"));
        Path password = Files.writeString(folder.resolve("box.password"), "heron-lantern-42\n");
        BounceReader reader = new BounceReader(
                new LocalMail.Box(green.getImap().getPort(), Optional.of("reports"), Optional.of(password)),
                LocalMail.open(25));

        assertThatThrownBy(() -> reader.read(bounce -> {
                    throw new IllegalStateException("the database is away");
                }))
                .hasMessage("the database is away");
        assertThat(mails.of(id)).extracting(Line::state).containsExactly(State.SENT);
        assertThat(reader.read(new Bounced(at.parts)))
                .as("nothing was marked before it was kept")
                .isEqualTo(2);
        Line line = mails.of(id).get(0);
        assertThat(line.state()).isEqualTo(State.BOUNCED);
        assertThat(line.why()).isEqualTo("550 5.1.1 no such mailbox");
        assertThat(at.report(id).state()).as("it stays what it is").isEqualTo(ReportState.SENT);
        assertThat(at.report(id).mails()).isEqualTo(new KeptReport.Mails(0, 0, 0, 1));
        assertThat(reader.read(new Bounced(at.parts))).as("all are read").isZero();
        assertThat(unread()).as("other mails stay as they are").containsExactly("A question");
    }

    /** Subjects, as another program reads them. */
    private List<String> unread() throws Exception {
        List<String> subjects = new ArrayList<>();
        try (Store store = Session.getInstance(new Properties()).getStore("imap")) {
            store.connect("127.0.0.1", green.getImap().getPort(), "reports", "heron-lantern-42");
            try (Folder inbox = store.getFolder("INBOX")) {
                inbox.open(Folder.READ_ONLY);
                for (Message message : inbox.search(new FlagTerm(new Flags(Flags.Flag.SEEN), false))) {
                    subjects.add(message.getSubject());
                }
            }
        }
        return subjects;
    }

    @Test
    void whatComesBackOtherwiseIsNotedByHand() {
        long id = onItsWay(OWNER);
        long mail = mails.of(id).get(0).id();
        assertThatThrownBy(() -> mails.bounced(mail, "mailbox full")).isInstanceOf(DeskRejected.class);
        assertThat(post().step()).isTrue();
        assertThatThrownBy(() -> mails.bounced(mail, " ")).isInstanceOf(DeskRejected.class);
        mails.bounced(mail, "mailbox full");
        assertThat(mails.of(id).get(0).state()).isEqualTo(State.BOUNCED);
        assertThat(at.done(customer)).endsWith("noted a mail that came back of");
    }

    private static void deliver(GreenMailUser box, String text) throws Exception {
        byte[] octets = text.replace("\n", "\r\n").getBytes(StandardCharsets.US_ASCII);
        Session session = Session.getInstance(new Properties());
        box.deliver(new MimeMessage(session, new ByteArrayInputStream(octets)));
    }

    /** RFC 3464 and RFC 6522. */
    private static String notification(String key, String action, String diagnostic) {
        return """
                From: Mail Delivery System <postmaster@mail.fernhollow.example>
                To: reports@fernhollow.example
                Subject: Returned mail
                MIME-Version: 1.0
                Content-Type: multipart/report; report-type=delivery-status; boundary="b1"

                --b1
                Content-Type: text/plain

                Your mail could not be delivered.

                --b1
                Content-Type: message/delivery-status

                Reporting-MTA: dns; mail.fernhollow.example

                Final-Recipient: rfc822; owner@pebblegate.example
                Action: %s
                Status: 5.1.1
                Diagnostic-Code: smtp; %s

                --b1
                Content-Type: message/rfc822

                From: reports@fernhollow.example
                To: owner@pebblegate.example
                Message-ID: <%s@fernhollow.example>
                Subject: Wi-Fi of Pebblegate Dental

                Text.

                --b1--
                """.formatted(action, diagnostic, key);
    }
}
