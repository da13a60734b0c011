package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.dispatch.DispatchFixture.NOVEMBER;
import static org.roundsman.dispatch.DispatchFixture.OCTOBER;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.dispatch.work.Revisions;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.paper.Paper;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportDocument;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportTables;
import org.roundsman.reports.ReportWords;

/** What was sent stays as it is, and later data makes another revision. */
class SentReportsDbTest {

    private static final CustomerScope EVERYONE = CustomerScope.everyone();

    private DispatchFixture at;
    private long customer;

    @BeforeEach
    void aCustomer() {
        at = DispatchFixture.on("sent_reports");
        customer = at.customer("Pebblegate Dental", "Europe/London");
        at.plan(customer, "owner@pebblegate.example");
    }

    @Test
    void whatWasSentIsTheSameDocumentALongTimeLater() {
        Brands brands = new Brands(at.parts);
        brands.saveFirm(new BrandDraft("Fernhollow Networks", "#1B6E53", Optional.empty(), false, List.of("1 Lane")));
        long id = at.built(customer);
        at.desk.remark(id, "A quiet month.");
        at.desk.approve(id);
        byte[] before = at.shelf.pdf(EVERYONE, id).orElseThrow();
        at.desk.send(id);
        at.finish();
        at.post(letter -> {}).step();
        byte[] json = at.shelf.json(EVERYONE, id).orElseThrow();
        byte[] pdf = at.shelf.pdf(EVERYONE, id).orElseThrow();
        ReportLook look = at.shelf.look(EVERYONE, id).orElseThrow();
        assertThat(pdf).as("made anew, one would be another").isNotEqualTo(before);

        at.clock.forward(Duration.ofDays(400));
        brands.saveFirm(new BrandDraft("Other Name", "", Optional.empty(), false, List.of()));
        brands.save(customer, new BrandDraft("Pebblegate Dental Group", "", Optional.empty(), false, List.of()));
        at.rows.run("update customer set name = 'Pebblegate Dental Group' where id = ?", customer);
        at.making.observed = ReportExample.nothingObserved();
        assertThat(at.shelf.json(EVERYONE, id).orElseThrow()).isEqualTo(json);
        assertThat(at.shelf.pdf(EVERYONE, id).orElseThrow()).isEqualTo(pdf);
        ReportLook later = at.shelf.look(EVERYONE, id).orElseThrow();
        assertThat(later.firm().name()).isEqualTo("Fernhollow Networks");
        assertThat(later.firm().colour()).isEqualTo("#1b6e53");
        assertThat(later.customer().name()).isEqualTo("Pebblegate Dental");
        assertThat(later.printed()).isEqualTo(look.printed());
        assertThat(later.remark()).isEqualTo("A quiet month.");
        KeptReport kept = at.report(id);
        // FIPS 180-4, worked out by PostgreSQL over what is stored
        assertThat(at.rows.one(
                        "select encode(sha256(figures), 'hex') || encode(sha256(pdf), 'hex') from report where id = ?",
                        row -> row.getString(1),
                        id))
                .hasValue(kept.prints().figures() + kept.prints().pdf());
        assertThat(kept.prints().pdfSize()).isEqualTo(pdf.length);
    }

    /** Whoever may read it gets the figures too; list prices are in them only where the report shows them. */
    @Test
    void pricesThatAreNotShownAreNotKeptEither() throws IOException {
        long shown = at.built(customer);
        at.desk.look(shown, at.report(shown).language(), at.report(shown).paper(), true);
        send(shown);
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        at.plan(other, "piers@saltmarsh.example");
        long hidden = at.built(other);
        at.desk.look(hidden, at.report(hidden).language(), at.report(hidden).paper(), false);
        send(hidden);
        for (String said : everything(CustomerScope.of(customer), shown)) {
            assertThat(said).containsAnyOf("GBP", "£");
        }
        for (CustomerScope reader : List.of(EVERYONE, CustomerScope.of(other))) {
            for (String said : everything(reader, hidden)) {
                assertThat(said).isNotBlank().doesNotContain("GBP", "£", "list price");
            }
        }
    }

    /** All that somebody can be given of a report: figures, tables, page and PDF. */
    private List<String> everything(CustomerScope reader, long id) throws IOException {
        Report figures = at.shelf.figures(reader, id).orElseThrow();
        ReportLook look = at.shelf.look(reader, id).orElseThrow();
        ReportDocument document = new ReportDocument(new ReportWords(Optional::empty), new Paper());
        try (PDDocument pdf = Loader.loadPDF(document.pdf(figures, look))) {
            return List.of(
                    new String(at.shelf.json(reader, id).orElseThrow(), StandardCharsets.UTF_8),
                    ReportTables.of(figures).stream().map(ReportTables::csv).collect(Collectors.joining()),
                    document.fragment(figures, look),
                    new PDFTextStripper().getText(pdf));
        }
    }

    private void send(long id) {
        at.desk.approve(id);
        at.desk.send(id);
        at.finish();
        at.post(letter -> {}).step();
        assertThat(at.report(id).state()).isEqualTo(ReportState.SENT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "figures = figures || '\\x20'",
                "pdf = '\\x25504446'",
                "remark = 'another'",
                "language = 'de-DE'",
                "firm_brand = customer_brand",
                "sent_at = now()",
                "state = 'REVIEWED', sent_at = null"
            })
    void theDatabaseRefusesToChangeWhatWasSent(String change) {
        long id = at.sent(customer);
        String before = row(id);
        assertThatThrownBy(() -> at.rows.run("update report set " + change + " where id = ?", id))
                .hasMessageContaining("was sent and does not change any more");
        assertThat(row(id)).isEqualTo(before);
    }

    private String row(long id) {
        return at.rows
                .one("select md5(r::text) from report r where id = ?", row -> row.getString(1), id)
                .orElseThrow();
    }

    @Test
    void theDatabaseRefusesToChangeABrand() {
        at.sent(customer);
        assertThatThrownBy(() -> at.rows.run("update report_brand set name = 'Another'"))
                .hasMessageContaining("does not change");
    }

    @Test
    void theDeskRefusesIt() {
        long id = at.sent(customer);
        assertThatThrownBy(() -> at.desk.remark(id, "x")).isInstanceOf(DeskRejected.class);
        assertThatThrownBy(() -> at.desk.reopen(id)).isInstanceOf(DeskRejected.class);
        assertThatThrownBy(() -> at.desk.approve(id)).isInstanceOf(DeskRejected.class);
        assertThatThrownBy(() -> at.desk.send(id)).isInstanceOf(DeskRejected.class);
    }

    @Test
    void theSameDataMakesNoFurtherRevision() {
        long id = at.sent(customer);
        at.clock.forward(Duration.ofDays(5));
        assertThatThrownBy(() -> at.desk.build(customer, OCTOBER, NOVEMBER))
                .isInstanceOf(DeskRejected.class)
                .hasMessageContaining("still holds");
        assertThat(at.shelf.revisions(EVERYONE, id)).hasSize(1);
    }

    @Test
    void otherDataMakesAFurtherRevisionForTheSameMoment() {
        long id = at.sent(customer);
        String figures = at.report(id).prints().figures();
        at.clock.forward(Duration.ofDays(5));
        at.making.observed = ReportExample.nothingObserved();
        long further = at.desk.build(customer, OCTOBER, NOVEMBER);
        KeptReport second = at.report(further);
        assertThat(second.revision()).isEqualTo(2);
        assertThat(second.state()).isEqualTo(ReportState.TO_REVIEW);
        assertThat(second.why()).isEqualTo("later data");
        assertThat(second.last()).isTrue();
        assertThat(at.shelf.figures(EVERYONE, further).orElseThrow().asOf())
                .isEqualTo(at.shelf.figures(EVERYONE, id).orElseThrow().asOf());
        assertThat(at.report(id).last()).isFalse();
        assertThat(at.report(id).prints().figures()).isEqualTo(figures);
        CustomerScope own = CustomerScope.of(customer);
        assertThat(at.shelf.revisions(own, id))
                .as("of an unsent revision a customer sees nothing")
                .singleElement()
                .satisfies(first -> assertThat(first.last()).isTrue());
        at.desk.approve(further);
        at.desk.send(further);
        at.finish();
        at.post(letter -> {}).step();
        assertThat(at.shelf.revisions(own, id)).extracting(KeptReport::revision).containsExactly(2, 1);
        assertThat(new String(at.shelf.json(own, id).orElseThrow(), StandardCharsets.UTF_8))
                .as("the first one stays to be had")
                .contains("Market Row");
    }

    @Test
    void laterDataIsFoundForSixtyDaysAndMakesOneRevision() {
        long early = at.sent(customer);
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        at.plan(other, "owner@saltmarsh.example");
        at.clock.forward(Duration.ofDays(10));
        long late = at.sent(other);
        at.clock.forward(Duration.ofDays(55));
        Revisions revisions = new Revisions(at.parts);
        assertThat(revisions.step()).as("55 days ago").isTrue();
        assertThat(revisions.step()).as("65 days ago").isFalse();
        assertThat(at.shelf.revisions(EVERYONE, late)).as("the same data").hasSize(1);
        at.making.observed = ReportExample.nothingObserved();
        at.clock.forward(Duration.ofDays(1));
        assertThat(revisions.step()).isTrue();
        assertThat(at.shelf.revisions(EVERYONE, late))
                .extracting(KeptReport::state)
                .containsExactly(ReportState.TO_REVIEW, ReportState.SENT);
        at.clock.forward(Duration.ofDays(1));
        assertThat(revisions.step()).as("it has a further revision").isFalse();
        assertThat(at.shelf.revisions(EVERYONE, late)).hasSize(2);
        assertThat(at.shelf.revisions(EVERYONE, early)).hasSize(1);
    }

    @Test
    void eachIsCheckedOnceADayHoweverOftenTheServiceStarts() {
        long first = at.sent(customer);
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        at.plan(other, "owner@saltmarsh.example");
        at.clock.forward(Duration.ofHours(1));
        long second = at.sent(other);
        assertThat(new Revisions(at.parts).step()).as("sent just now").isFalse();
        at.clock.forward(Duration.ofHours(24));
        assertThat(stepAfterAStart()).isTrue();
        assertThat(checked()).as("the one that was sent first").containsExactly(first);
        assertThat(stepAfterAStart()).isTrue();
        assertThat(checked()).containsExactlyInAnyOrder(first, second);
        assertThat(stepAfterAStart()).as("both were checked").isFalse();
        at.clock.forward(Duration.ofHours(24));
        assertThat(stepAfterAStart()).isTrue();
    }

    /** As a service does that was started just now. */
    private boolean stepAfterAStart() {
        DispatchFixture anew = at.startedAgain("sent_reports");
        anew.clock.turn(at.clock.instant().toString());
        return new Revisions(anew.parts).step();
    }

    private List<Long> checked() {
        return at.rows.list("select report_id from report_check", row -> row.getLong(1));
    }

    @Test
    void oneThatCannotBeCheckedDoesNotKeepTheOthersAndIsTriedTheNextDay() {
        long first = at.sent(customer);
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        at.plan(other, "owner@saltmarsh.example");
        at.clock.forward(Duration.ofHours(1));
        long second = at.sent(other);
        at.clock.forward(Duration.ofHours(24));
        at.making.observed = ReportExample.nothingObserved();
        at.making.before = subject -> {
            if (subject.customerId() == customer) {
                throw new IllegalStateException("no such zone");
            }
            return subject;
        };
        Revisions revisions = new Revisions(at.parts);
        assertThat(revisions.step()).isTrue();
        assertThat(revisions.step()).isTrue();
        assertThat(revisions.step()).isFalse();
        assertThat(at.shelf.revisions(EVERYONE, first)).hasSize(1);
        assertThat(at.shelf.revisions(EVERYONE, second)).hasSize(2);
        at.making.before = subject -> subject;
        at.clock.forward(Duration.ofHours(24));
        assertThat(revisions.step()).isTrue();
        assertThat(at.shelf.revisions(EVERYONE, first)).hasSize(2);
    }
}
