package org.roundsman.reports;

import static org.roundsman.reports.TableCells.number;
import static org.roundsman.reports.TableCells.percent;
import static org.roundsman.reports.TableCells.row;
import static org.roundsman.reports.TableCells.seconds;
import static org.roundsman.reports.TableCells.yes;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Stream;

/** The tables of what was observed: sites, days, outages, clients, radios and rooms. */
final class ObservedTables {

    private static final List<String> WATCH = List.of(
            "availability-percent",
            "coverage-percent",
            "answering-seconds",
            "silent-seconds",
            "refusing-seconds",
            "planned-seconds",
            "unwatched-seconds");

    private static final int HOURS_A_DAY = 24;

    private ObservedTables() {}

    static List<ReportTable> of(Report report) {
        return List.of(sites(report), days(report), outages(report), clients(report), radios(report), rooms(report));
    }

    /** Availability is around the clock here; that of service hours, by which the target is judged, stands before it. */
    private static ReportTable sites(Report report) {
        List<String> columns = joined(
                List.of(
                        "site",
                        "town",
                        "time-zone",
                        "access-points",
                        "since",
                        "length-seconds",
                        "service-seconds",
                        "target-percent",
                        "service-availability-percent",
                        "target-met",
                        "lost-seconds",
                        "allowed-seconds",
                        "clients-mean",
                        "clients-busiest-hour",
                        "busiest-hour"),
                WATCH);
        return new ReportTable(
                "sites",
                columns,
                report.sites().stream()
                        .map(site -> joined(site(site), TableCells.watch(site.whole())))
                        .toList());
    }

    private static List<Object> site(SiteFigures site) {
        Optional<Crowd.Busiest> busiest = site.crowd().busiest();
        return row(
                site.site(),
                site.town(),
                site.zone().getId(),
                site.accessPoints(),
                site.since().orElse(null),
                seconds(site.length()),
                seconds(site.serviceHours()),
                site.target(),
                percent(site.service().share()),
                site.met().map(TableCells::yes).orElse(null),
                seconds(site.lost()),
                seconds(site.allowed()),
                site.crowd().clients().map(Crowd.Split::all).orElse(null),
                busiest.map(hour -> hour.clients().all()).orElse(null),
                busiest.map(Crowd.Busiest::at).orElse(null));
    }

    private static ReportTable days(Report report) {
        return new ReportTable(
                "days",
                joined(List.of("site", "day", "length-seconds"), WATCH),
                report.sites().stream()
                        .flatMap(site -> site.days().stream()
                                .map(day -> joined(
                                        row(site.site(), day.date(), seconds(day.length())),
                                        TableCells.watch(day.watch()))))
                        .toList());
    }

    private static ReportTable outages(Report report) {
        List<String> columns = List.of(
                "site",
                "cause",
                "what",
                "from",
                "to",
                "length-seconds",
                "ongoing",
                "begun-before",
                "access-points",
                "whole-site",
                "silence-seconds",
                "times",
                "people",
                "person-minutes",
                "noticed",
                "taken",
                "replaced",
                "alarm");
        return new ReportTable(
                "outages",
                columns,
                report.outages().stream().map(ObservedTables::outage).toList());
    }

    private static List<Object> outage(Outage outage) {
        return row(
                outage.site(),
                outage.cause().name(),
                outage.what(),
                outage.from(),
                outage.to(),
                seconds(outage.length()),
                yes(outage.ongoing()),
                yes(outage.begunBefore()),
                outage.accessPoints(),
                yes(outage.wholeSite()),
                seconds(outage.silence()),
                outage.times(),
                whole(outage.people()),
                number(outage.personMinutes()),
                outage.noticed().orElse(null),
                outage.taken().orElse(null),
                yes(outage.replaced()),
                whole(outage.alarmId()));
    }

    private static Integer whole(OptionalInt number) {
        return number.isEmpty() ? null : (Integer) number.getAsInt();
    }

    private static Long whole(OptionalLong number) {
        return number.isEmpty() ? null : (Long) number.getAsLong();
    }

    /** All sites together first, with no site named; weekdays from 1 for Monday (ISO 8601), none for the typical day. */
    private static ReportTable clients(Report report) {
        Stream<List<Object>> rows = Stream.concat(
                clients("", report.crowd()),
                report.sites().stream().flatMap(site -> clients(site.site(), site.crowd())));
        return new ReportTable(
                "clients-by-hour",
                List.of("site", "figure", "weekday", "hour", "all", "staff", "guest", "other"),
                rows.toList());
    }

    private static Stream<List<Object>> clients(String site, Crowd crowd) {
        List<List<Object>> rows = new ArrayList<>();
        for (int hour = 0; hour < HOURS_A_DAY; hour++) {
            rows.add(row(
                    site, "typical-day", null, hour, number(crowd.typicalDay().get(hour)), null, null, null));
        }
        for (int hour = 0; hour < crowd.week().size(); hour++) {
            Optional<Crowd.Split> split = crowd.week().get(hour);
            rows.add(row(
                    site,
                    "week",
                    hour / HOURS_A_DAY + 1,
                    hour % HOURS_A_DAY,
                    split.map(Crowd.Split::all).orElse(null),
                    split.map(Crowd.Split::staff).orElse(null),
                    split.map(Crowd.Split::guest).orElse(null),
                    split.map(Crowd.Split::other).orElse(null)));
        }
        return rows.stream();
    }

    private static ReportTable radios(Report report) {
        List<String> columns = List.of(
                "site",
                "access-point",
                "place",
                "radio",
                "band-ghz",
                "utilisation-p95-percent",
                "utilisation-mean-percent",
                "busy-seconds",
                "quarter-hours",
                "quarter-hours-expected",
                "clients-p95");
        return new ReportTable(
                "radios",
                columns,
                report.radios().stream()
                        .map(radio -> row(
                                radio.site(),
                                radio.device(),
                                radio.place(),
                                radio.number(),
                                number(radio.band()),
                                number(radio.utilisation()),
                                number(radio.mean()),
                                seconds(radio.busy()),
                                radio.quarters(),
                                radio.expected(),
                                number(radio.clients())))
                        .toList());
    }

    private static ReportTable rooms(Report report) {
        return new ReportTable(
                "rooms",
                List.of(
                        "site",
                        "access-point",
                        "place",
                        "reason",
                        "radio",
                        "utilisation-p95-percent",
                        "time-seconds",
                        "times"),
                report.rooms().stream()
                        .map(room -> row(
                                room.site(),
                                room.device(),
                                room.place(),
                                room.reason().name(),
                                whole(room.radio()),
                                number(room.figure()),
                                seconds(room.time()),
                                room.times()))
                        .toList());
    }

    private static <T> List<T> joined(List<T> one, List<T> other) {
        List<T> both = new ArrayList<>(one);
        both.addAll(other);
        return both;
    }
}
