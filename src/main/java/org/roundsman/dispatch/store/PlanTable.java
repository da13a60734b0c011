package org.roundsman.dispatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.reports.ReportLook.PaperSize;
import org.roundsman.system.Rows;

/** Plans of customers, and what of customers they need to know. */
public final class PlanTable {

    private final Rows rows;

    public PlanTable(Rows rows) {
        this.rows = rows;
    }

    /** A customer with sites. @param zone of its first site */
    public record Sited(long customerId, String name, int sites, String zone) {}

    /** A plan that is at work. @param next the month that is built next */
    public record AtWork(ReportPlan plan, YearMonth next) {}

    public List<ReportPlan> all() {
        return rows.list("select * from report_plan order by customer_id", PlanTable::read);
    }

    public Optional<ReportPlan> find(long customerId) {
        return rows.one("select * from report_plan where customer_id = ?", PlanTable::read, customerId);
    }

    /** Those that build by themselves. */
    public List<AtWork> atWork() {
        return rows.list(
                "select * from report_plan where active order by customer_id",
                row -> new AtWork(
                        read(row), YearMonth.from(Rows.day(row, "next_month").orElseThrow())));
    }

    public Optional<YearMonth> next(long customerId) {
        return rows.one(
                "select next_month from report_plan where customer_id = ? and active",
                row -> YearMonth.from(Rows.day(row, "next_month").orElseThrow()),
                customerId);
    }

    /** Keeps it. @param next which month it builds next; empty where it is not active */
    public void save(ReportPlan plan, Optional<YearMonth> next, Instant now) {
        rows.run(
                "insert into report_plan (customer_id, active, day, hour, time_zone, language, paper, recipients,"
                        + " approval, costs, keep_months, next_month, changed_at) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?,"
                        + " ?, ?, ?) on conflict (customer_id) do update set active = excluded.active, day ="
                        + " excluded.day, hour = excluded.hour, time_zone = excluded.time_zone, language ="
                        + " excluded.language, paper = excluded.paper, recipients = excluded.recipients, approval ="
                        + " excluded.approval, costs = excluded.costs, keep_months = excluded.keep_months, next_month ="
                        + " excluded.next_month, changed_at = excluded.changed_at",
                plan.customerId(),
                plan.active(),
                plan.day(),
                plan.hour(),
                plan.zone().getId(),
                plan.language().toLanguageTag(),
                plan.paper().name(),
                plan.recipients(),
                plan.approval(),
                plan.costs(),
                plan.keepMonths(),
                next.map(month -> month.atDay(1)),
                now);
    }

    /** Goes on to the month after, unless somebody changed the plan meanwhile. */
    public boolean advance(long customerId, YearMonth from) {
        LocalDate first = from.atDay(1);
        return rows.run(
                        "update report_plan set next_month = ? where customer_id = ? and active and next_month = ?",
                        first.plusMonths(1),
                        customerId,
                        first)
                == 1;
    }

    /** Name of a customer, if it is there. */
    public Optional<String> customer(long customerId) {
        return rows.one("select name from customer where id = ?", row -> row.getString(1), customerId);
    }

    /** Every customer with a site, by name. */
    public List<Sited> sited() {
        return rows.list(
                "select c.id, c.name, count(*) as sites, (array_agg(s.time_zone order by s.id))[1] as zone from customer c"
                        + " join site s on s.customer_id = c.id group by c.id, c.name order by lower(c.name), c.id",
                row -> new Sited(row.getLong("id"), row.getString("name"), row.getInt("sites"), row.getString("zone")));
    }

    /** Time zones of a customer's sites, that of its first site first. */
    public List<ZoneId> zones(long customerId) {
        return rows.list(
                "select time_zone from site where customer_id = ? group by time_zone order by min(id)",
                row -> ZoneId.of(row.getString(1)),
                customerId);
    }

    private static ReportPlan read(ResultSet row) throws SQLException {
        return new ReportPlan(
                row.getLong("customer_id"),
                row.getBoolean("active"),
                row.getInt("day"),
                row.getInt("hour"),
                ZoneId.of(row.getString("time_zone")),
                Locale.forLanguageTag(row.getString("language")),
                PaperSize.valueOf(row.getString("paper")),
                Rows.texts(row, "recipients"),
                row.getBoolean("approval"),
                row.getBoolean("costs"),
                row.getInt("keep_months"));
    }
}
