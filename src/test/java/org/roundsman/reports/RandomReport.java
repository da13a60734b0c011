package org.roundsman.reports;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** Invented reports made from a number: full, empty, large and small ones, with long names. No name holds a digit. */
public final class RandomReport {

    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    private static final List<String> NAMES = List.of(
            "Quay",
            "Hill Top",
            "the old harbour house by the long bridge over the river, north wing",
            "Šibenik & Sons");

    private final Random random;
    private final ReportSubject subject;

    private RandomReport(long seed) {
        random = new Random(seed);
        YearMonth month = YearMonth.of(2026, 1 + random.nextInt(12));
        subject = random.nextInt(4) == 0
                ? new ReportSubject(7, "Pebblegate Dental", month.atDay(3), month.atDay(3 + 1 + random.nextInt(20)))
                : ReportSubject.of(7, "Pebblegate Dental", month);
    }

    public static Report of(long seed) {
        return new RandomReport(seed).report();
    }

    private Report report() {
        List<SiteFigures> sites = list(1 + random.nextInt(6), this::site);
        Watch whole = sites.stream().map(SiteFigures::whole).reduce(Watch.NONE, Watch::plus);
        Watch service = sites.stream().map(SiteFigures::service).reduce(Watch.NONE, Watch::plus);
        boolean observed = whole.share().isPresent();
        return new Report(
                Report.FORM,
                subject,
                subject.to().atStartOfDay(ZONE).toInstant(),
                random.nextBoolean(),
                whole,
                service,
                crowd(),
                sites,
                observed ? list(random.nextInt(60), at -> outage(sites)) : List.of(),
                list(random.nextInt(50), this::radio),
                list(random.nextInt(5), this::room),
                equipment(),
                handling(),
                new WorkDone(List.of(), List.of(), List.of()),
                list(random.nextInt(5), this::recommendation));
    }

    private static <T> List<T> list(int size, java.util.function.IntFunction<T> each) {
        return IntStream.range(0, size).mapToObj(each).toList();
    }

    private String name() {
        return NAMES.get(random.nextInt(NAMES.size()));
    }

    private static double rounded(double figure) {
        return BigDecimal.valueOf(figure).setScale(4, RoundingMode.HALF_UP).doubleValue();
    }

    private Watch watch(int kind) {
        Duration answering = kind == 0 ? Duration.ZERO : Duration.ofSeconds(random.nextInt(80_000));
        Duration silent = kind == 0 || random.nextBoolean() ? Duration.ZERO : Duration.ofSeconds(random.nextInt(9_000));
        Duration planned = random.nextInt(3) > 0 ? Duration.ZERO : Duration.ofSeconds(random.nextInt(9_000));
        Duration unwatched = kind < 2 ? Duration.ofSeconds(random.nextInt(90_000)) : Duration.ZERO;
        Duration length = answering.plus(silent).plus(planned).plus(unwatched);
        return new Watch(length, answering, silent, Duration.ZERO, planned, unwatched);
    }

    private SiteFigures site(int at) {
        List<SiteFigures.Day> days = new ArrayList<>();
        int kind = random.nextInt(4);
        for (LocalDate day = subject.from(); day.isBefore(subject.to()); day = day.plusDays(1)) {
            days.add(new SiteFigures.Day(day, Duration.ofHours(24), watch(kind)));
        }
        Watch whole = days.stream().map(SiteFigures.Day::watch).reduce(Watch.NONE, Watch::plus);
        return new SiteFigures(
                at + 1,
                name(),
                "Pebblegate",
                ZONE,
                99.5,
                Duration.ofDays(days.size()),
                Duration.ofHours(8L * days.size()),
                2,
                Optional.empty(),
                whole,
                random.nextBoolean() ? whole : watch(kind),
                days,
                crowd());
    }

    private Outage outage(List<SiteFigures> sites) {
        SiteFigures site = sites.get(random.nextInt(sites.size()));
        Instant from = subject.from().atStartOfDay(ZONE).toInstant().plusSeconds(random.nextInt(70_000));
        Instant to = from.plusSeconds(1 + random.nextInt(90_000));
        return new Outage(
                site.siteId(),
                site.site(),
                ZONE,
                Outage.Cause.values()[random.nextInt(Outage.Cause.values().length)],
                name(),
                from,
                to,
                random.nextInt(9) == 0,
                false,
                1,
                random.nextBoolean(),
                Duration.between(from, to),
                1,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                Optional.of(from.plusSeconds(60)),
                Optional.empty(),
                false,
                OptionalLong.empty());
    }

    private Crowd crowd() {
        boolean counted = random.nextInt(4) > 0;
        double all = rounded(random.nextDouble() * 300);
        Crowd.Split split = new Crowd.Split(all, 0, all, 0);
        Instant at = subject.from().atStartOfDay(ZONE).toInstant();
        return new Crowd(
                counted ? Optional.of(split) : Optional.empty(),
                counted ? rounded(random.nextDouble()) : 0,
                counted ? Optional.of(new Crowd.Busiest(at, ZONE, split)) : Optional.empty(),
                list(24, hour -> counted ? OptionalDouble.of(all) : OptionalDouble.empty()),
                list(168, hour -> counted && hour % 7 > 0 ? Optional.of(split) : Optional.empty()),
                earlier(),
                earlier());
    }

    private Crowd.Earlier earlier() {
        return random.nextBoolean()
                ? Crowd.Earlier.NOTHING
                : new Crowd.Earlier(
                        OptionalDouble.of(rounded(random.nextDouble() * 300)),
                        OptionalDouble.empty(),
                        rounded(random.nextDouble()));
    }

    private RadioFigures radio(int at) {
        double figure = rounded(random.nextDouble() * 100);
        return new RadioFigures(
                1,
                "Quay",
                at,
                name(),
                name(),
                1,
                OptionalDouble.of(5),
                at % 9 == 0 ? OptionalDouble.empty() : OptionalDouble.of(figure),
                OptionalDouble.empty(),
                Duration.ofMinutes(15L * random.nextInt(99)),
                90,
                100,
                OptionalDouble.empty());
    }

    private Room room(int at) {
        return new Room(
                1,
                name(),
                at,
                name(),
                random.nextBoolean() ? "" : name(),
                Room.Reason.OFTEN_AWAY,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                Duration.ofHours(2),
                3);
    }

    private Equipment equipment() {
        int withdrawn = random.nextInt(3);
        return new Equipment(
                9,
                withdrawn == 0 ? new TreeMap<>() : new TreeMap<>(Map.of("WITHDRAWN", withdrawn)),
                List.of(),
                new TreeMap<>(),
                list(
                        random.nextInt(15),
                        at -> new Equipment.Ending(
                                name(),
                                name(),
                                "TR-22",
                                "TMR-" + at,
                                subject.to().plusDays(at))),
                0,
                new TreeMap<>(),
                0);
    }

    private Handling handling() {
        return new Handling(
                random.nextInt(2), new TreeMap<>(), 0, 0, 0, 0, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private Recommendation recommendation(int at) {
        Recommendation.Kind[] kinds = Recommendation.Kind.values();
        return new Recommendation(
                kinds[random.nextInt(kinds.length)],
                random.nextBoolean() ? "" : name(),
                name(),
                1 + random.nextInt(4),
                OptionalDouble.of(rounded(random.nextDouble() * 100)),
                Duration.ofMinutes(random.nextInt(5000)),
                Optional.of(subject.to()),
                new TreeMap<>(Map.of("EUR", new BigDecimal("189.90"))));
    }
}
