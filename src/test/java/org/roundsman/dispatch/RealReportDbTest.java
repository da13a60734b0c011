package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.mail.internet.MimeMultipart;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
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
import org.roundsman.mail.MailServer;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook.PaperSize;

/** The way of a report from the figures of the database to a mailbox, with nothing put in place of anything but the mail server. */
@QuarkusTest
class RealReportDbTest {

    private static final CustomerScope EVERYONE = CustomerScope.everyone();

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

    @Test
    void aReportOfTheDatabaseArrivesAsTheDocumentThatIsKept() throws Exception {
        long customer = customer("Pebblegate Real Dental");
        LocalDate to = YearMonth.from(parts.now().atZone(ZoneOffset.UTC)).minusMonths(1).atDay(1);
        plans.save(
                customer,
                new PlanDraft(
                        false,
                        3,
                        6,
                        "Europe/London",
                        parts.making().languages().get(0).toLanguageTag(),
                        PaperSize.A4,
                        List.of("owner@pebblegate.example"),
                        true,
                        false,
                        24));
        long id = desk.build(customer, to.minusMonths(1), to);
        Builder builder = new Builder(parts, new DispatchMeters(new SimpleMeterRegistry()));
        assertThat(builder.step()).isTrue();
        assertThat(shelf.find(EVERYONE, id).orElseThrow().failure()).isEmpty();
        Report figures = shelf.figures(EVERYONE, id).orElseThrow();
        assertThat(figures.subject().customer()).isEqualTo("Pebblegate Real Dental");
        desk.remark(id, "The line will be mended in spring.");
        desk.approve(id);
        new Reviewing(parts, plans::of, () -> true).send(id);
        assertThat(builder.step()).isTrue();
        GreenMail green = new GreenMail(new ServerSetup(0, "127.0.0.1", "smtp").dynamicPort());
        green.start();
        try {
            MailServer server = new MailServer(new LocalMail(green.getSmtp().getPort()), parts.clock());
            Pauses pauses = new Pauses(Duration.ofMinutes(1), Duration.ofHours(1), new Random(7));
            assertThat(new Post(parts, server::send, pauses).step()).isTrue();
            MimeMultipart all =
                    (MimeMultipart) green.getReceivedMessages()[0].getContent();
            byte[] pdf = all.getBodyPart(1).getInputStream().readAllBytes();
            KeptReport sent = shelf.find(EVERYONE, id).orElseThrow();
            assertThat(sent.state()).isEqualTo(ReportState.SENT);
            assertThat(parts.making().sha256(pdf)).isEqualTo(sent.prints().pdf());
            try (PDDocument document = Loader.loadPDF(pdf)) {
                assertThat(new PDFTextStripper().getText(document))
                        .contains("Pebblegate Real Dental")
                        .contains("The line will be mended in spring.");
            }
        } finally {
            green.stop();
        }
    }

    @Test
    void theSameMomentGivesTheSameFiguresToTheOctet() {
        long customer = customer("Saltmarsh Real Ferry");
        LocalDate to = YearMonth.from(parts.now().atZone(ZoneOffset.UTC)).minusMonths(1).atDay(1);
        long id = desk.build(customer, to.minusMonths(1), to);
        assertThat(new Builder(parts, new DispatchMeters(new SimpleMeterRegistry())).step()).isTrue();
        Report kept = shelf.figures(EVERYONE, id).orElseThrow();
        Report again = parts.making().figures(kept.subject(), kept.asOf());
        assertThat(parts.making().json(again)).isEqualTo(shelf.json(EVERYONE, id).orElseThrow());
    }
}
