package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.work.Builder;
import org.roundsman.dispatch.work.DispatchMeters;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.dispatch.work.Pauses;
import org.roundsman.dispatch.work.Post;
import org.roundsman.dispatch.work.Reviewing;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.mail.LocalMail;
import org.roundsman.mail.MailServer;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook.PaperSize;

/** The way of a report from the figures of the database to a mailbox, with nothing put in place of anything but the mail server. */
@QuarkusTest
class RealReportDbTest {

    private static final CustomerScope EVERYONE = CustomerScope.everyone();
    private static final String RECIPIENT = "owner@real.pebblegate.example";

    @Inject
    Parts parts;

    @Inject
    MonthDesk desk;

    @Inject
    ReportPlans plans;

    @Inject
    ReportShelf shelf;

    private long customer(String name) {
        long id = parts.store().rows().number("insert into customer (name) values (?) returning id", name);
        parts.store()
                .rows()
                .number(
                        "insert into site (customer_id, name, time_zone) values (?, 'Canal Bridge', 'Europe/London')"
                                + " returning id",
                        id);
        return id;
    }

    /** A month that is over, whatever the day. @return its first day */
    private LocalDate lastMonth() {
        return YearMonth.from(parts.now().atZone(ZoneOffset.UTC)).minusMonths(2).atDay(1);
    }

    private void plan(long customer) {
        plans.save(
                customer,
                new PlanDraft(
                        false,
                        3,
                        6,
                        "Europe/London",
                        parts.making().languages().get(0).toLanguageTag(),
                        PaperSize.A4,
                        List.of(RECIPIENT),
                        true,
                        false,
                        24));
    }

    private long built(long customer) {
        LocalDate from = lastMonth();
        long id = desk.build(customer, from, from.plusMonths(1));
        finish();
        assertThat(shelf.find(EVERYONE, id).orElseThrow().failure()).isEmpty();
        return id;
    }

    /** Builds and prints whatever there is, that of other tests too. */
    private void finish() {
        Builder builder = new Builder(parts, new DispatchMeters(new SimpleMeterRegistry()));
        boolean more = true;
        while (more) {
            more = builder.step();
        }
    }

    /** The PDF that comes in there. */
    private byte[] posted() throws Exception {
        GreenMail green = new GreenMail(new ServerSetup(0, "127.0.0.1", "smtp").dynamicPort());
        green.start();
        try {
            MailServer server = new MailServer(LocalMail.open(green.getSmtp().getPort()), parts.clock());
            Pauses pauses = new Pauses(Duration.ofMinutes(1), Duration.ofHours(1), new Random(7));
            Post post = new Post(parts, server::send, pauses);
            boolean more = true;
            while (more) {
                more = post.step();
            }
            List<MimeMessage> got = new ArrayList<>();
            for (MimeMessage mail : green.getReceivedMessages()) {
                if (mail.getAllRecipients()[0].toString().equals(RECIPIENT)) {
                    got.add(mail);
                }
            }
            assertThat(got).hasSize(1);
            MimeMultipart all = (MimeMultipart) got.get(0).getContent();
            return all.getBodyPart(1).getInputStream().readAllBytes();
        } finally {
            green.stop();
        }
    }

    @Test
    void aReportOfTheDatabaseArrivesAsTheDocumentThatIsKept() throws Exception {
        long customer = customer("Pebblegate Real Dental");
        plan(customer);
        long id = built(customer);
        Report figures = shelf.figures(EVERYONE, id).orElseThrow();
        assertThat(figures.subject().customer()).isEqualTo("Pebblegate Real Dental");
        desk.remark(id, "The line will be mended in spring.");
        desk.approve(id);
        new Reviewing(parts, plans::of, () -> true).send(id);
        finish();
        byte[] pdf = posted();
        KeptReport sent = shelf.find(EVERYONE, id).orElseThrow();
        assertThat(sent.state()).isEqualTo(ReportState.SENT);
        assertThat(parts.making().sha256(pdf)).isEqualTo(sent.prints().pdf());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
                    .contains("Pebblegate Real Dental")
                    .contains("The line will be mended in spring.");
        }
    }

    @Test
    void theSameMomentGivesTheSameFiguresToTheOctet() {
        long id = built(customer("Saltmarsh Real Ferry"));
        Report kept = shelf.figures(EVERYONE, id).orElseThrow();
        Report again = parts.making().figures(kept.subject(), kept.asOf());
        assertThat(parts.making().json(again))
                .isEqualTo(shelf.json(EVERYONE, id).orElseThrow());
    }
}
