package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.dispatch.DispatchFixture.NOVEMBER;
import static org.roundsman.dispatch.DispatchFixture.OCTOBER;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.dispatch.work.Revisions;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.ReportLook;

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

    /** The customer gets the figures too; list prices are in them only where the report shows them. */
    @Test
    void pricesThatAreNotShownAreNotKeptEither() {
        long shown = at.built(customer);
        at.desk.look(shown, at.report(shown).language(), at.report(shown).paper(), true);
        send(shown);
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        at.plan(other, "piers@saltmarsh.example");
        long hidden = at.built(other);
        at.desk.look(hidden, at.report(hidden).language(), at.report(hidden).paper(), false);
        send(hidden);
        CustomerScope reader = CustomerScope.of(other);
        assertThat(at.shelf.figures(EVERYONE, shown).orElseThrow().equipment().endingCost())
                .isNotEmpty();
        assertThat(at.shelf.figures(reader, hidden).orElseThrow().equipment().endingCost())
                .isEmpty();
        assertThat(at.shelf.figures(reader, hidden).orElseThrow().recommendations())
                .isNotEmpty()
                .allMatch(one -> one.cost().isEmpty());
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
        assertThat(revisions.late()).as("65 and 55 days ago").containsExactly(late);
        revisions.look(late);
        assertThat(at.shelf.revisions(EVERYONE, late)).as("the same data").hasSize(1);
        at.making.observed = ReportExample.nothingObserved();
        revisions.look(late);
        assertThat(at.shelf.revisions(EVERYONE, late))
                .extracting(KeptReport::state)
                .containsExactly(ReportState.TO_REVIEW, ReportState.SENT);
        assertThat(revisions.late()).as("it has a further revision").isEmpty();
        revisions.look(late);
        assertThat(at.shelf.revisions(EVERYONE, late)).hasSize(2);
        assertThat(at.shelf.revisions(EVERYONE, early)).hasSize(1);
    }
}
