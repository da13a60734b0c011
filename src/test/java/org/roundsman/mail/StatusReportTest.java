package org.roundsman.mail;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.Test;

/** Notifications built as RFC 3464, section 2, and RFC 6522 say, with their fields in the order of the former's appendix. */
class StatusReportTest {

    private static final String HEAD = """
            From: Mail Delivery System <postmaster@mail.fernhollow.example>
            To: reports@fernhollow.example
            Subject: Returned mail
            MIME-Version: 1.0
            Content-Type: multipart/report; report-type=delivery-status; boundary="RAA14128/x"

            --RAA14128/x

            Your mail could not be delivered.

            --RAA14128/x
            Content-Type: message/delivery-status

            Reporting-MTA: dns; mail.fernhollow.example
            Arrival-Date: Tue, 3 Nov 2026 09:00:00 +0000

            """;

    private static final String FAILED = """
            Original-Recipient: rfc822;owner@pebblegate.example
            Final-Recipient: RFC822; owner@pebblegate.example
            Action: failed
            Status: 5.1.1
            Diagnostic-Code: smtp; 550 5.1.1 no such mailbox;
              ask somebody else
            Last-Attempt-Date: Tue, 3 Nov 2026 09:00:05 +0000

            """;

    private static final String RETURNED = """
            --RAA14128/x
            Content-Type: message/rfc822

            From: reports@fernhollow.example
            Message-ID: <6c1f0d8e-58a4-4f0e-9b60-0f2f4e6f2a11@fernhollow.example>
            Subject: Your report

            Text.
            --RAA14128/x--
            """;

    private static List<Bounce> read(String text) throws MessagingException, IOException {
        byte[] octets = text.replace("\n", "\r\n").getBytes(StandardCharsets.US_ASCII);
        Session session = Session.getInstance(new Properties());
        return StatusReport.read(new MimeMessage(session, new ByteArrayInputStream(octets)));
    }

    @Test
    void aFailureNamesTheMailTheRecipientAndTheReason() throws Exception {
        assertThat(read(HEAD + FAILED + RETURNED))
                .containsExactly(new Bounce(
                        "6c1f0d8e-58a4-4f0e-9b60-0f2f4e6f2a11",
                        "owner@pebblegate.example",
                        Bounce.Action.FAILED,
                        "550 5.1.1 no such mailbox; ask somebody else"));
    }

    @Test
    void ofSeveralRecipientsEachIsSaid() throws Exception {
        String delayed = "Final-Recipient: rfc822; desk@pebblegate.example\nAction: DELAYED\nStatus: 4.4.1\n\n";
        String fine = "Final-Recipient: rfc822; wren@pebblegate.example\nAction: delivered\nStatus: 2.0.0\n\n";
        assertThat(read(HEAD + FAILED + delayed + fine + RETURNED))
                .extracting(Bounce::recipient, Bounce::action, Bounce::why)
                .as("RFC 3464, section 2.3.3: delivered is no bounce")
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(
                                "owner@pebblegate.example",
                                Bounce.Action.FAILED,
                                "550 5.1.1 no such mailbox; ask somebody else"),
                        org.assertj.core.groups.Tuple.tuple("desk@pebblegate.example", Bounce.Action.DELAYED, "4.4.1"));
    }

    @Test
    void theHeadersAloneAreEnough() throws Exception {
        assertThat(read(HEAD + FAILED + RETURNED.replace("message/rfc822", "text/rfc822-headers")))
                .hasSize(1);
    }

    @Test
    void whatSaysNothingOfAMailOfOursIsNoBounce() throws Exception {
        assertThat(read(HEAD + FAILED + RETURNED.replaceAll("Message-ID: .*", "X-Other: none")))
                .isEmpty();
        assertThat(read(HEAD.replace("report-type=delivery-status", "report-type=disposition-notification")
                        + FAILED
                        + RETURNED))
                .isEmpty();
        assertThat(read("Subject: Action: failed\n\nFinal-Recipient: rfc822; a@b.example\nAction: failed\n"))
                .isEmpty();
        assertThat(read(HEAD + RETURNED)).isEmpty();
    }
}
