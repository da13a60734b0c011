package org.roundsman.reports;

import static org.roundsman.reports.TableCells.number;
import static org.roundsman.reports.TableCells.row;
import static org.roundsman.reports.TableCells.seconds;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** The tables of equipment, of what was done, and of what we advise. */
final class StandingTables {

    private StandingTables() {}

    static List<ReportTable> of(Report report) {
        return List.of(firmware(report), warranty(report), alarms(report), work(report), recommendations(report));
    }

    private static ReportTable firmware(Report report) {
        List<List<Object>> rows = new ArrayList<>();
        for (Equipment.Runs runs : report.equipment().versions()) {
            new TreeMap<>(runs.statuses())
                    .forEach((status, devices) -> rows.add(row(runs.model(), runs.version(), status, devices)));
        }
        return new ReportTable("firmware", List.of("model", "version", "status", "devices"), rows);
    }

    /** How many stand how, then each that ends, then what replacing those costs. */
    private static ReportTable warranty(Report report) {
        Equipment equipment = report.equipment();
        List<List<Object>> rows = new ArrayList<>();
        equipment.warranty().forEach((status, devices) -> rows.add(warranty("status", status, devices)));
        rows.add(warranty("past-support", null, equipment.pastSupport()));
        for (Equipment.Ending ending : equipment.ending()) {
            rows.add(row(
                    "ends",
                    null,
                    1,
                    ending.site(),
                    ending.device(),
                    ending.model(),
                    ending.serial(),
                    ending.lastDay(),
                    null,
                    null));
        }
        equipment
                .endingCost()
                .forEach((currency, cost) ->
                        rows.add(row("cost", null, null, null, null, null, null, null, cost, currency)));
        rows.add(warranty("without-price", null, equipment.unpriced()));
        return new ReportTable(
                "warranty",
                List.of(
                        "figure",
                        "status",
                        "devices",
                        "site",
                        "device",
                        "model",
                        "serial",
                        "last-day",
                        "cost",
                        "currency"),
                rows);
    }

    private static List<Object> warranty(String figure, String status, int devices) {
        return row(figure, status, devices, null, null, null, null, null, null, null);
    }

    private static ReportTable alarms(Report report) {
        Handling handling = report.handling();
        List<List<Object>> rows = new ArrayList<>();
        rows.add(row("alarms", handling.alarms()));
        handling.severities()
                .forEach((severity, count) -> rows.add(row("severity-" + severity.toLowerCase(Locale.ROOT), count)));
        rows.add(row("explained", handling.explained()));
        rows.add(row("planned", handling.planned()));
        rows.add(row("taken", handling.taken()));
        rows.add(row("cleared", handling.cleared()));
        rows.add(row("to-take-median-seconds", seconds(handling.toTake())));
        rows.add(row("to-clear-median-seconds", seconds(handling.toClear())));
        rows.add(row("to-clear-longest-seconds", seconds(handling.longest())));
        return new ReportTable("alarms", List.of("figure", "value"), rows);
    }

    private static ReportTable work(Report report) {
        WorkDone work = report.work();
        List<List<Object>> rows = new ArrayList<>();
        work.planned()
                .forEach(one -> rows.add(
                        row("planned", one.site(), one.device(), one.title(), one.from(), one.to(), null, null)));
        work.replaced()
                .forEach(one -> rows.add(row(
                        "replaced", one.site(), one.device(), null, one.at(), null, one.oldSerial(), one.newSerial())));
        work.upgraded()
                .forEach(one -> rows.add(
                        row("upgraded", one.site(), one.device(), null, one.at(), null, one.old(), one.fresh())));
        return new ReportTable("work", List.of("kind", "site", "device", "title", "from", "to", "old", "new"), rows);
    }

    /** One that costs something in several currencies has a row for each, with the same number. */
    private static ReportTable recommendations(Report report) {
        List<List<Object>> rows = new ArrayList<>();
        int number = 0;
        for (Recommendation one : report.recommendations()) {
            number++;
            if (one.cost().isEmpty()) {
                rows.add(recommendation(number, one, null, null));
            }
            for (Map.Entry<String, BigDecimal> cost : one.cost().entrySet()) {
                rows.add(recommendation(number, one, cost.getValue(), cost.getKey()));
            }
        }
        return new ReportTable(
                "recommendations",
                List.of(
                        "number",
                        "kind",
                        "site",
                        "what",
                        "count",
                        "figure-percent",
                        "time-seconds",
                        "day",
                        "cost",
                        "currency"),
                rows);
    }

    private static List<Object> recommendation(int number, Recommendation one, BigDecimal cost, String currency) {
        return row(
                number,
                one.kind().name(),
                one.site(),
                one.what(),
                one.count(),
                number(one.figure()),
                seconds(one.time()),
                one.day().orElse(null),
                cost,
                currency);
    }
}
