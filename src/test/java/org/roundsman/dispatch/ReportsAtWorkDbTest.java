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
import org.roundsman.testing.ReportsAtWork;

/** The service builds by itself what waits. */
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

    @Test
    void whatWaitsIsBuiltAndCounted() {
        long customer = parts.store()
                .rows()
                .number("insert into customer (name) values ('Tidewater Books at work') returning id");
        parts.store()
                .rows()
                .number(
                        "insert into site (customer_id, name, time_zone) values (?, 'Shop', 'Europe/Berlin')"
                                + " returning id",
                        customer);
        LocalDate from = YearMonth.from(parts.now().atZone(ZoneOffset.UTC))
                .minusMonths(2)
                .atDay(1);
        long id = desk.build(customer, from, from.plusMonths(1));
        await().atMost(Duration.ofSeconds(90)).untilAsserted(() -> assertThat(
                        shelf.find(CustomerScope.everyone(), id).orElseThrow().state())
                .isEqualTo(ReportState.TO_REVIEW));
        assertThat(registry.get("roundsman.reports.built").counter().count()).isGreaterThanOrEqualTo(1);
        assertThat(registry.get("roundsman.reports.waiting").gauge().value()).isGreaterThanOrEqualTo(0);
    }
}
