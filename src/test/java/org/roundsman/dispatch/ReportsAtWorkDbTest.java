package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.system.Rows;
import org.roundsman.testing.ReportsAtWork;

/** The service builds by itself what waits, and checks what was sent. */
@QuarkusTest
@TestProfile(ReportsAtWork.class)
class ReportsAtWorkDbTest {

    @Inject
    Parts parts;

    @Inject
    MonthDesk desk;

    @Inject
    ReportShelf shelf;

    @Inject
    MeterRegistry registry;

    private long customer(String name) {
        Rows rows = parts.store().rows();
        long customer = rows.number("insert into customer (name) values (?) returning id", name);
        rows.number(
                "insert into site (customer_id, name, time_zone) values (?, 'Shop', 'Europe/Berlin') returning id",
                customer);
        return customer;
    }

    /** The report of a month that is over, whatever the day. */
    private long built(long customer) {
        LocalDate from = YearMonth.from(parts.now().atZone(ZoneOffset.UTC))
                .minusMonths(2)
                .atDay(1);
        long id = desk.build(customer, from, from.plusMonths(1));
        await().atMost(Duration.ofSeconds(90)).untilAsserted(() -> assertThat(
                        shelf.find(CustomerScope.everyone(), id).orElseThrow().state())
                .isEqualTo(ReportState.TO_REVIEW));
        return id;
    }

    /** Soon after a start, however short the service runs. */
    @Test
    void whatWasSentMoreThanADayAgoIsCheckedForLaterData() {
        long customer = customer("Tidewater Books checked");
        long id = built(customer);
        Rows rows = parts.store().rows();
        long brand = rows.number(
                "insert into report_brand (customer_id, name, made_at, replaced_at)"
                        + " values (?, 'Tidewater Books checked', now(), now()) returning id",
                customer);
        rows.run(
                "update report set state = 'SENT', settled_at = now(), firm_brand = ?, customer_brand = ?,"
                        + " pdf = '\\x25', pdf_sha256 = 'invented', sent_at = now() - interval '25 hours' where id = ?",
                brand,
                brand,
                id);
        await().atMost(Duration.ofSeconds(90)).untilAsserted(() -> assertThat(
                        rows.number("select count(*) from report_check where report_id = ?", id))
                .isEqualTo(1));
        assertThat(shelf.revisions(CustomerScope.everyone(), id))
                .as("the data is the same")
                .hasSize(1);
    }

    @Test
    void whatWaitsIsBuiltAndCounted() {
        built(customer("Tidewater Books at work"));
        assertThat(registry.get("roundsman.reports.built").counter().count()).isGreaterThanOrEqualTo(1);
        assertThat(registry.get("roundsman.reports.waiting").gauge().value()).isGreaterThanOrEqualTo(0);
    }
}
