package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.dispatch.DispatchFixture.NOVEMBER;
import static org.roundsman.dispatch.DispatchFixture.OCTOBER;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.work.Retention;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.ReportLook.PaperSize;

/** Reports are removed when their customer's time for them is over. */
class ReportRetentionDbTest {

    private DispatchFixture at;
    private long customer;

    @BeforeEach
    void aCustomerWhoseReportsAreKeptSixMonths() {
        at = DispatchFixture.on("report_retention");
        customer = at.customer("Pebblegate Dental", "Europe/London");
        at.plans.save(
                customer,
                new PlanDraft(
                        false,
                        3,
                        6,
                        "Europe/London",
                        "en-GB",
                        PaperSize.A4,
                        List.of("owner@pebblegate.example"),
                        true,
                        false,
                        6));
    }

    private long count() {
        return at.rows.number("select count(*) from report");
    }

    private int lookAt(String moment) {
        at.clock.turn(moment);
        return new Retention(at.parts).look();
    }

    @Test
    void allRevisionsGoOnTheDayThatTheirTimeIsOver() {
        long id = at.sent(customer);
        new ReportLinks(at.parts).make(id, 30);
        at.making.observed = ReportExample.nothingObserved();
        at.desk.build(customer, OCTOBER, NOVEMBER);
        at.rows.run(
                "insert into report_check (report_id, checked_at) select id, now() from report where state = 'SENT'");
        long other = at.customer("Saltmarsh Ferry Line", "Europe/London");
        at.built(other);
        assertThat(lookAt("2027-04-30T23:59:59Z")).isZero();
        assertThat(lookAt("2027-05-01T00:00:00Z"))
                .as("six months after 1 November, both revisions")
                .isEqualTo(2);
        assertThat(count()).as("the other has 24 months").isEqualTo(1);
        assertThat(at.rows.number("select count(*) from report_mail")).isZero();
        assertThat(at.rows.number("select count(*) from report_link")).isZero();
        assertThat(at.rows.number("select count(*) from report_check")).isZero();
        assertThat(at.done(customer)).endsWith("removed");
        assertThat(lookAt("2028-11-01T00:00:00Z")).isEqualTo(1);
        assertThat(count()).isZero();
    }

    @Test
    void whatWaitsToBeSentAndWasAskedForLatelyStays() {
        at.clock.turn("2027-06-20T12:00:00Z");
        at.built(customer);
        assertThat(lookAt("2027-06-21T12:00:00Z")).isZero();
        assertThat(lookAt("2027-08-20T12:00:00Z"))
                .as("queued after 20 June, 00:00")
                .isZero();
        assertThat(lookAt("2027-08-21T12:00:00Z")).isEqualTo(1);
    }

    @Test
    void brandsGoWithTheLastReportThatShowsThem() {
        Brands brands = new Brands(at.parts);
        brands.saveFirm(new BrandDraft("Fernhollow Networks", "", Optional.empty(), false, List.of()));
        at.sent(customer);
        brands.saveFirm(new BrandDraft("Fernhollow", "", Optional.empty(), false, List.of()));
        assertThat(lookAt("2026-12-01T00:00:00Z")).isZero();
        assertThat(at.rows.number("select count(*) from report_brand"))
                .as("the firm's two, and the customer's name")
                .isEqualTo(3);
        assertThat(lookAt("2027-05-01T00:00:00Z")).isEqualTo(1);
        assertThat(at.rows.list("select name from report_brand", row -> row.getString(1)))
                .containsExactly("Fernhollow");
    }
}
