package org.roundsman.reports;

import java.math.BigDecimal;
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
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Invented reports for tests. The full one holds something of everything: three clinics, one of which came during the month, two
 * outages, planned work, a day and a half in which nobody was looking, a target that was missed, and every list filled. Its times
 * fit together: the parts of each day add up, and the silence of the outages is the silence of their sites.
 */
public final class ReportExample {

    public static final ReportSubject SUBJECT = ReportSubject.of(7, "Pebblegate Dental", YearMonth.of(2026, 10));

    /** Early on the first of November. */
    public static final Instant AS_OF = Instant.parse("2026-11-01T05:00:00Z");

    static final ZoneId LONDON = ZoneId.of("Europe/London");

    private static final ExampleClinic CANAL = new ExampleClinic(
            12,
            "Canal Bridge",
            "Pebblegate Quay",
            List.of("Reception", "Treatment 1", "Treatment 2", "Waiting room", "Staff room"),
            SUBJECT.from(),
            14);

    private static final ExampleClinic HILL = new ExampleClinic(
            13,
            "Hill Top",
            "Upper Pebblegate",
            List.of("Reception", "Treatment 1", "Waiting room", "Workshop"),
            LocalDate.of(2026, 10, 5),
            22);

    private static final ExampleClinic MARKET = new ExampleClinic(
            11,
            "Market Row",
            "Pebblegate",
            List.of("Reception", "Treatment 1", "Treatment 2", "Treatment 3", "Waiting room", "X-ray"),
            SUBJECT.from(),
            31);

    private static final List<ExampleClinic> CLINICS = List.of(CANAL, HILL, MARKET);

    private static final Outage LINE = new Outage(
            CANAL.id(),
            CANAL.name(),
            LONDON,
            Outage.Cause.UPLINK,
            CANAL.name(),
            london("2026-10-06", 10, 12),
            london("2026-10-06", 11, 47),
            false,
            false,
            5,
            true,
            Duration.ofMinutes(5 * 95),
            1,
            OptionalInt.of(14),
            OptionalDouble.of(14 * 95),
            Optional.of(london("2026-10-06", 10, 15)),
            Optional.of(london("2026-10-06", 10, 21)),
            false,
            OptionalLong.of(4711));

    private static final Outage DEAD = new Outage(
            MARKET.id(),
            MARKET.name(),
            LONDON,
            Outage.Cause.DEVICE,
            MARKET.device(3),
            london("2026-10-17", 14, 5),
            london("2026-10-19", 9, 40),
            false,
            false,
            1,
            false,
            Duration.ofMinutes(43 * 60 + 35),
            1,
            OptionalInt.of(2),
            OptionalDouble.of(2 * (43 * 60 + 35)),
            Optional.of(london("2026-10-17", 14, 8)),
            Optional.of(london("2026-10-19", 7, 55)),
            true,
            OptionalLong.of(4790));

    private ReportExample() {}

    /** The whole of October 2026. */
    public static Report full() {
        ExampleTimes times = new ExampleTimes(List.of(LINE, DEAD))
                .planned(HILL, london("2026-10-14", 20, 0), london("2026-10-14", 22, 0))
                .unwatched(CANAL, london("2026-10-22", 18, 0), london("2026-10-24", 6, 30));
        List<SiteFigures> sites = CLINICS.stream()
                .map(clinic -> times.site(clinic, crowd(List.of(clinic))))
                .toList();
        return new Report(
                Report.FORM,
                SUBJECT,
                AS_OF,
                true,
                sites.stream().map(SiteFigures::whole).reduce(Watch.NONE, Watch::plus),
                sites.stream().map(SiteFigures::service).reduce(Watch.NONE, Watch::plus),
                crowd(CLINICS),
                sites,
                List.of(LINE, DEAD),
                radios(),
                List.of(busy(), away()),
                equipment(),
                handling(),
                work(),
                recommendations());
    }

    /** One site with two access points of which nothing came in. */
    public static Report nothingObserved() {
        ExampleClinic clinic = new ExampleClinic(
                12, "Canal Bridge", "Pebblegate Quay", List.of("Reception", "Staff room"), SUBJECT.from(), 0);
        ExampleTimes times =
                new ExampleTimes(List.of()).unwatched(clinic, london("2026-10-01", 0, 0), london("2026-11-01", 0, 0));
        SiteFigures site = times.site(clinic, ExampleCrowd.nobodyKnown());
        return new Report(
                Report.FORM,
                SUBJECT,
                AS_OF,
                true,
                site.whole(),
                site.service(),
                ExampleCrowd.nobodyKnown(),
                List.of(site),
                List.of(),
                List.of(),
                List.of(),
                unknown(),
                new Handling(0, new TreeMap<>(), 0, 0, 0, 0, Optional.empty(), Optional.empty(), Optional.empty()),
                new WorkDone(List.of(), List.of(), List.of()),
                List.of(new Recommendation(
                        Recommendation.Kind.MEND_OUR_VIEW,
                        clinic.name(),
                        "",
                        1,
                        OptionalDouble.of(0),
                        site.whole().unwatched(),
                        Optional.empty(),
                        new TreeMap<>())));
    }

    private static Equipment unknown() {
        return new Equipment(
                2,
                new TreeMap<>(Map.of("NOT_KNOWN", 2)),
                List.of(),
                new TreeMap<>(Map.of("MISSING", 2)),
                List.of(),
                0,
                new TreeMap<>(),
                0);
    }

    private static Crowd crowd(List<ExampleClinic> clinics) {
        return ExampleCrowd.of(clinics, clinics.equals(List.of(CANAL)) ? 0.9517 : 1, london("2026-10-12", 10, 0));
    }

    private static List<RadioFigures> radios() {
        List<RadioFigures> radios = new ArrayList<>();
        for (ExampleClinic clinic : CLINICS) {
            for (int at = 0; at < clinic.places().size(); at++) {
                radios.add(radio(clinic, at, 1));
                radios.add(radio(clinic, at, 2));
            }
        }
        return radios;
    }

    /** The second radio of the last access point at Hill Top tells nothing of its channel. */
    private static RadioFigures radio(ExampleClinic clinic, int at, int number) {
        boolean mute = clinic == HILL && at == 3 && number == 2;
        boolean crammed = clinic == HILL && at == 2 && number == 1;
        int expected = clinic == HILL ? 2596 : 2980;
        int missing = clinic == CANAL ? 152 : clinic == MARKET && at == 3 ? 175 : clinic == HILL ? 8 : 0;
        double utilisation = crammed ? 78.4375 : (number == 1 ? 34.5 : 17.25) + 3.125 * at;
        return new RadioFigures(
                clinic.id(),
                clinic.name(),
                clinic.deviceId(at),
                clinic.device(at),
                clinic.places().get(at),
                number,
                mute ? OptionalDouble.empty() : OptionalDouble.of(number == 1 ? 2.4 : 5),
                mute ? OptionalDouble.empty() : OptionalDouble.of(utilisation),
                mute ? OptionalDouble.empty() : OptionalDouble.of(utilisation / 2),
                crammed ? Duration.ofMinutes(31 * 60 + 15) : Duration.ZERO,
                mute ? 0 : expected - missing,
                expected,
                mute ? OptionalDouble.empty() : OptionalDouble.of(number + at + 0.5));
    }

    private static Room busy() {
        return new Room(
                HILL.id(),
                HILL.name(),
                HILL.deviceId(2),
                HILL.device(2),
                "Waiting room",
                Room.Reason.BUSY_CHANNEL,
                OptionalInt.of(1),
                OptionalDouble.of(78.4375),
                Duration.ofMinutes(31 * 60 + 15),
                0);
    }

    private static Room away() {
        return new Room(
                MARKET.id(),
                MARKET.name(),
                MARKET.deviceId(3),
                MARKET.device(3),
                "Treatment 3",
                Room.Reason.LONG_AWAY,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                DEAD.length(),
                1);
    }

    private static Equipment equipment() {
        String small = "Tamarack Radio TR-10";
        String usual = "Tamarack Radio TR-22";
        return new Equipment(
                15,
                new TreeMap<>(Map.of("CURRENT", 9, "BEHIND", 3, "WITHDRAWN", 2, "NOT_KNOWN", 1)),
                List.of(
                        new Equipment.Runs(small, "5.8.1", 2, Map.of("WITHDRAWN", 2)),
                        new Equipment.Runs(usual, "", 1, Map.of("NOT_KNOWN", 1)),
                        new Equipment.Runs(usual, "6.3.0", 3, Map.of("BEHIND", 3)),
                        new Equipment.Runs(usual, "6.4.2", 9, Map.of("CURRENT", 9))),
                new TreeMap<>(
                        Map.of("COVERED", 9, "ENDS_WITHIN_60", 1, "ENDS_WITHIN_180", 2, "ENDED", 2, "MISSING", 1)),
                List.of(
                        ending(CANAL, 0, usual, LocalDate.of(2026, 12, 20)),
                        ending(MARKET, 0, usual, LocalDate.of(2027, 2, 28)),
                        ending(MARKET, 1, usual, LocalDate.of(2027, 2, 28))),
                2,
                new TreeMap<>(Map.of("GBP", new BigDecimal("569.70"))),
                0);
    }

    private static Equipment.Ending ending(ExampleClinic clinic, int at, String model, LocalDate lastDay) {
        return new Equipment.Ending(
                clinic.name(), clinic.device(at), model, "TMR-22-00" + clinic.deviceId(at), lastDay);
    }

    private static Handling handling() {
        return new Handling(
                9,
                new TreeMap<>(Map.of("CRITICAL", 1, "MAJOR", 2, "MINOR", 4, "WARNING", 2)),
                6,
                4,
                7,
                8,
                Optional.of(Duration.ofMinutes(9)),
                Optional.of(Duration.ofMinutes(52)),
                Optional.of(DEAD.length()));
    }

    private static WorkDone work() {
        return new WorkDone(
                List.of(new WorkDone.PlannedWork(
                        HILL.name(),
                        "",
                        "New firmware on all access points",
                        LONDON,
                        london("2026-10-14", 20, 0),
                        london("2026-10-14", 22, 0))),
                List.of(new WorkDone.Replaced(
                        MARKET.name(),
                        MARKET.device(3),
                        "TMR-22-000881",
                        "TMR-22-001204",
                        LONDON,
                        london("2026-10-19", 9, 40))),
                Stream.of(0, 1, 2, 3)
                        .map(at -> new WorkDone.Upgraded(
                                HILL.name(),
                                HILL.device(at),
                                "6.3.0",
                                "6.4.2",
                                LONDON,
                                london("2026-10-14", 20, 15 + 10 * at)))
                        .toList());
    }

    /** The most urgent first. */
    private static List<Recommendation> recommendations() {
        return Stream.concat(aboutService().stream(), aboutEquipment().stream()).toList();
    }

    private static List<Recommendation> aboutService() {
        return List.of(
                new Recommendation(
                        Recommendation.Kind.LOOK_AT_LINE,
                        CANAL.name(),
                        "",
                        1,
                        OptionalDouble.of(99.3116),
                        LINE.length(),
                        Optional.empty(),
                        new TreeMap<>()),
                new Recommendation(
                        Recommendation.Kind.LOOK_AT_DEVICE,
                        MARKET.name(),
                        MARKET.device(3),
                        1,
                        OptionalDouble.empty(),
                        DEAD.length(),
                        Optional.empty(),
                        new TreeMap<>()),
                new Recommendation(
                        Recommendation.Kind.UPGRADE_WITHDRAWN,
                        "",
                        "Tamarack Radio TR-10",
                        2,
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.empty(),
                        new TreeMap<>()),
                new Recommendation(
                        Recommendation.Kind.ADD_ACCESS_POINT,
                        HILL.name(),
                        "Waiting room",
                        1,
                        OptionalDouble.of(78.4375),
                        Duration.ofMinutes(31 * 60 + 15),
                        Optional.empty(),
                        new TreeMap<>(Map.of("GBP", new BigDecimal("189.90")))));
    }

    private static List<Recommendation> aboutEquipment() {
        return List.of(
                new Recommendation(
                        Recommendation.Kind.REPLACE_PAST_SUPPORT,
                        "",
                        "",
                        2,
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.empty(),
                        new TreeMap<>(Map.of("GBP", new BigDecimal("198.00")))),
                new Recommendation(
                        Recommendation.Kind.RENEW_COVER,
                        "",
                        "",
                        3,
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.of(LocalDate.of(2026, 12, 20)),
                        new TreeMap<>(Map.of("GBP", new BigDecimal("569.70")))),
                new Recommendation(
                        Recommendation.Kind.UPGRADE_BEHIND,
                        "",
                        "Tamarack Radio TR-22",
                        3,
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.empty(),
                        new TreeMap<>()));
    }

    /** A moment by the clock on the wall of all clinics. */
    static Instant london(String day, int hour, int minute) {
        return LocalDate.parse(day).atTime(hour, minute).atZone(LONDON).toInstant();
    }
}
