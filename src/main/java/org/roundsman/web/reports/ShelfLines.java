package org.roundsman.web.reports;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.shared.Page;

/** Reports as lists show them, their moments by the clock of their customer's plan. */
@ApplicationScoped
class ShelfLines {

    private final ReportPlans plans;

    ShelfLines(ReportPlans plans) {
        this.plans = plans;
    }

    Page<ShelfLine> of(Page<KeptReport> found) {
        Map<Long, ZoneId> zones = new HashMap<>();
        return new Page<>(
                found.items().stream()
                        .map(one -> line(one, zones.computeIfAbsent(one.customerId(), id -> plans.of(id)
                                .zone())))
                        .toList(),
                found.number(),
                found.size(),
                found.total());
    }

    private static ShelfLine line(KeptReport one, ZoneId zone) {
        return new ShelfLine(
                one.id(),
                one.customerId(),
                one.customer(),
                Periods.of(one),
                one.revision() + (one.last() ? "" : ", replaced by a later one"),
                StateWord.of(one.state()),
                one.sentAt().map(at -> Periods.moment(at, zone)).orElse(""));
    }
}
