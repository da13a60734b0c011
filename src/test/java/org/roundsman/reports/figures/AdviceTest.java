package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Equipment;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Recommendation;
import org.roundsman.reports.Recommendation.Kind;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.Room;
import org.roundsman.reports.SiteFigures;
import org.roundsman.reports.Watch;

/** The bounds are common practice, without a source: what is tested is on which side of them advice is given. */
class AdviceTest {

    private static final Instant BEGIN = Instant.parse("2026-10-06T08:00:00Z");
    private static final Costs NO_COSTS = new Costs(Map.of(), new TreeMap<>());
    private static final SortedMap<String, BigDecimal> PRICE = new TreeMap<>(Map.of("GBP", new BigDecimal("189.90")));

    /** 100 service hours at 99 %: one hour may be lost. */
    private static final Duration SERVICE = Duration.ofHours(100);

    private static Watch watch(Duration answering, Duration silent, Duration unwatched) {
        return new Watch(
                answering.plus(silent).plus(unwatched), answering, silent, Duration.ZERO, Duration.ZERO, unwatched);
    }

    /** A site with two access points that were silent for so long in service hours, both added up. */
    private static SiteFigures site(Duration silent, Duration unwatched) {
        Watch watch = watch(SERVICE.multipliedBy(2).minus(silent).minus(unwatched), silent, unwatched);
        return new SiteFigures(
                12,
                "Canal Bridge",
                "",
                ZoneOffset.UTC,
                99,
                SERVICE,
                SERVICE,
                2,
                Optional.empty(),
                watch,
                watch,
                List.of(),
                nobody());
    }

    private static Crowd nobody() {
        return new Crowd(
                Optional.empty(),
                0,
                Optional.empty(),
                Collections.nCopies(24, OptionalDouble.empty()),
                Collections.nCopies(168, Optional.empty()),
                Crowd.Earlier.NOTHING,
                Crowd.Earlier.NOTHING);
    }

    /** Both access points silent for so long. */
    private static Outage outage(Outage.Cause cause, Duration length) {
        return new Outage(
                12,
                "Canal Bridge",
                ZoneOffset.UTC,
                cause,
                "Canal Bridge",
                BEGIN,
                BEGIN.plus(length),
                false,
                false,
                2,
                true,
                length.multipliedBy(2),
                1,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                false,
                OptionalLong.empty());
    }

    private static Room room(long device, String place, Room.Reason reason, double figure, int times) {
        boolean busy = reason == Room.Reason.BUSY_CHANNEL;
        return new Room(
                12,
                "Canal Bridge",
                device,
                "ap-" + device,
                place,
                reason,
                busy ? OptionalInt.of(1) : OptionalInt.empty(),
                busy ? OptionalDouble.of(figure) : OptionalDouble.empty(),
                Duration.ofMinutes((long) (figure * 10)),
                times);
    }

    private static Equipment equipment(List<Equipment.Runs> versions, int pastSupport, List<Equipment.Ending> ending) {
        return new Equipment(
                9,
                new TreeMap<>(),
                versions,
                new TreeMap<>(),
                ending,
                pastSupport,
                ending.isEmpty() ? new TreeMap<>() : PRICE,
                0);
    }

    private static Equipment nothing() {
        return equipment(List.of(), 0, List.of());
    }

    private static List<Recommendation> advice(SiteFigures site, Outage... outages) {
        return Advice.of(List.of(site), List.of(outages), List.of(), nothing(), site.whole(), NO_COSTS);
    }

    private static List<Recommendation> about(Equipment equipment, Costs costs) {
        return Advice.of(List.of(), List.of(), List.of(), equipment, Watch.NONE, costs);
    }

    private static Recommendation one(
            Kind kind, String site, String what, int count, OptionalDouble figure, Duration time) {
        return new Recommendation(kind, site, what, count, figure, time, Optional.empty(), new TreeMap<>());
    }

    @Test
    void withoutEvidenceThereIsNoAdvice() {
        assertThat(advice(site(Duration.ZERO, Duration.ZERO))).isEmpty();
        assertThat(about(nothing(), NO_COSTS)).isEmpty();
    }

    @Test
    void theLineIsLookedAtAfterTwoOutages() {
        SiteFigures site = site(Duration.ofMinutes(8), Duration.ZERO);
        Outage outage = outage(Outage.Cause.UPLINK, Duration.ofMinutes(2));
        assertThat(advice(site, outage)).isEmpty();
        assertThat(advice(site, outage, outage(Outage.Cause.SWITCH, Duration.ofMinutes(2))))
                .isEmpty();
        // 8 minutes of 200 hours: 99.9333 %
        assertThat(advice(site, outage, outage))
                .containsExactly(one(
                        Kind.LOOK_AT_LINE, "Canal Bridge", "", 2, OptionalDouble.of(99.9333), Duration.ofMinutes(4)));
    }

    @Test
    void theLineIsLookedAtWhenItAloneCostsTheTarget() {
        Duration allowed = Duration.ofHours(1);
        Duration more = allowed.plusSeconds(1);
        assertThat(advice(site(allowed.multipliedBy(2), Duration.ZERO), outage(Outage.Cause.UPLINK, allowed)))
                .as("just what is allowed")
                .isEmpty();
        assertThat(advice(site(more.multipliedBy(2), Duration.ZERO), outage(Outage.Cause.UPLINK, more)))
                .extracting(Recommendation::kind)
                .containsExactly(Kind.LOOK_AT_LINE);
        assertThat(advice(site(more.multipliedBy(2), Duration.ZERO), outage(Outage.Cause.UPLINK, allowed)))
                .as("the line alone would not have")
                .isEmpty();
        assertThat(advice(site(Duration.ofMinutes(8), Duration.ZERO), outage(Outage.Cause.UPLINK, more)))
                .as("outside service hours, the target was met")
                .isEmpty();
    }

    @Test
    void roomsGiveAdviceByTheirReason() {
        List<Room> rooms = List.of(
                room(1, "Reception", Room.Reason.OFTEN_AWAY, 6, 3),
                room(2, "", Room.Reason.LONG_AWAY, 24, 1),
                room(3, "Waiting room", Room.Reason.BUSY_CHANNEL, 75, 0),
                room(3, "Waiting room", Room.Reason.BUSY_CHANNEL, 71, 0),
                room(4, "", Room.Reason.BUSY_CHANNEL, 80, 0));
        Costs costs = new Costs(Map.of(3L, PRICE), new TreeMap<>());
        assertThat(Advice.of(List.of(), List.of(), rooms, nothing(), Watch.NONE, costs))
                .containsExactly(
                        look("ap-2", 1, 4),
                        look("ap-1", 3, 1),
                        one(
                                Kind.ADD_ACCESS_POINT,
                                "Canal Bridge",
                                "ap-4",
                                1,
                                OptionalDouble.of(80),
                                Duration.ofMinutes(800)),
                        new Recommendation(
                                Kind.ADD_ACCESS_POINT,
                                "Canal Bridge",
                                "Waiting room",
                                2,
                                OptionalDouble.of(75),
                                Duration.ofMinutes(750),
                                Optional.empty(),
                                PRICE));
    }

    private static Recommendation look(String device, int times, int hours) {
        return one(Kind.LOOK_AT_DEVICE, "Canal Bridge", device, times, OptionalDouble.empty(), Duration.ofHours(hours));
    }

    /** Nobody reads a list of one line for each of many access points. */
    @Test
    void threeOfASiteGiveOnePieceOfAdvice() {
        List<Room> rooms = List.of(
                room(1, "", Room.Reason.OFTEN_AWAY, 6, 3),
                room(2, "", Room.Reason.LONG_AWAY, 24, 1),
                room(5, "", Room.Reason.LONG_AWAY, 24, 2));
        Costs none = new Costs(Map.of(), new TreeMap<>());
        assertThat(Advice.of(List.of(), List.of(), rooms, nothing(), Watch.NONE, none))
                .containsExactly(one(
                        Kind.LOOK_AT_DEVICES,
                        "Canal Bridge",
                        "ap-1, ap-2, ap-5",
                        6,
                        OptionalDouble.empty(),
                        Duration.ofHours(9)));
    }

    @Test
    void firmwareGivesOnePieceOfAdviceForEachModel() {
        Equipment equipment = equipment(
                List.of(
                        new Equipment.Runs("TR-10", "5.8.1", 2, Map.of("WITHDRAWN", 2)),
                        new Equipment.Runs("TR-22", "6.1.0", 3, Map.of("WITHDRAWN", 1, "EXCEPTED", 2)),
                        new Equipment.Runs("TR-22", "6.2.0", 4, Map.of("WITHDRAWN", 4)),
                        new Equipment.Runs("TR-22", "6.3.0", 1, Map.of("BEHIND", 1)),
                        new Equipment.Runs("TR-33", "6.4.2", 5, Map.of("CURRENT", 5))),
                0,
                List.of());
        OptionalDouble none = OptionalDouble.empty();
        assertThat(about(equipment, NO_COSTS))
                .containsExactly(
                        one(Kind.UPGRADE_WITHDRAWN, "", "TR-10", 2, none, Duration.ZERO),
                        one(Kind.UPGRADE_WITHDRAWN, "", "TR-22", 5, none, Duration.ZERO),
                        one(Kind.UPGRADE_BEHIND, "", "TR-22", 1, none, Duration.ZERO));
    }

    @Test
    void oneDevicePastSupportIsEnough() {
        Costs costs = new Costs(Map.of(), PRICE);
        assertThat(about(equipment(List.of(), 0, List.of()), costs)).isEmpty();
        assertThat(about(equipment(List.of(), 1, List.of()), costs))
                .singleElement()
                .satisfies(advice -> {
                    assertThat(advice.kind()).isEqualTo(Kind.REPLACE_PAST_SUPPORT);
                    assertThat(advice.count()).isEqualTo(1);
                    assertThat(advice.cost()).isEqualTo(PRICE);
                });
        assertThat(about(equipment(List.of(), 1, List.of()), NO_COSTS).get(0).cost())
                .as("no list price is known")
                .isEmpty();
    }

    @Test
    void coverThatEndsNamesTheFirstDayAndTheOneSite() {
        LocalDate december = LocalDate.of(2026, 12, 20);
        Equipment.Ending here = new Equipment.Ending("Canal Bridge", "ap-1", "TR-22", "S-1", december);
        Equipment.Ending later = new Equipment.Ending("Canal Bridge", "ap-2", "TR-22", "S-2", december.plusDays(60));
        Equipment.Ending there = new Equipment.Ending("Hill Top", "ap-1", "TR-22", "S-3", december.plusDays(60));
        assertThat(about(equipment(List.of(), 0, List.of(here, later)), NO_COSTS))
                .containsExactly(new Recommendation(
                        Kind.RENEW_COVER,
                        "Canal Bridge",
                        "",
                        2,
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.of(december),
                        PRICE));
        assertThat(about(equipment(List.of(), 0, List.of(here, there)), NO_COSTS))
                .extracting(Recommendation::site)
                .containsExactly("");
    }

    @Test
    void ourViewIsMendedBelowNinetyFivePerCent() {
        Duration twentieth = SERVICE.multipliedBy(2).dividedBy(20);
        assertThat(advice(site(Duration.ZERO, twentieth))).isEmpty();
        Duration more = twentieth.plusMinutes(6);
        assertThat(advice(site(Duration.ZERO, more)))
                .containsExactly(one(Kind.MEND_OUR_VIEW, "Canal Bridge", "", 1, OptionalDouble.of(94.95), more));
        Watch other = watch(Duration.ofHours(2000), Duration.ZERO, Duration.ZERO);
        SiteFigures site = site(Duration.ZERO, more);
        assertThat(Advice.of(
                        List.of(site),
                        List.of(),
                        List.of(),
                        nothing(),
                        site.whole().plus(other),
                        NO_COSTS))
                .as("all sites together were watched well enough")
                .isEmpty();
    }

    @Test
    void theExampleAdvisesWhatItsFiguresSay() {
        Report report = ReportExample.full();
        Costs costs = new Costs(Map.of(1303L, PRICE), new TreeMap<>(Map.of("GBP", new BigDecimal("198.00"))));
        assertThat(Advice.of(
                        report.sites(), report.outages(), report.rooms(), report.equipment(), report.whole(), costs))
                .isEqualTo(report.recommendations());
        Report dark = ReportExample.nothingObserved();
        assertThat(Advice.of(dark.sites(), dark.outages(), dark.rooms(), dark.equipment(), dark.whole(), NO_COSTS))
                .isEqualTo(dark.recommendations());
    }
}
