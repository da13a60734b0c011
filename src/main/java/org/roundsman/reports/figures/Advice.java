package org.roundsman.reports.figures;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.reports.Equipment;
import org.roundsman.reports.Equipment.Ending;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Recommendation;
import org.roundsman.reports.Recommendation.Kind;
import org.roundsman.reports.Room;
import org.roundsman.reports.SiteFigures;
import org.roundsman.reports.Watch;

/** What we advise because of the figures, and nothing without one. The bounds are common practice, without a source. */
public final class Advice {

    private static final int OFTEN_LINE = 2;
    private static final double ENOUGH_VIEW = 0.95;
    private static final SortedMap<String, BigDecimal> NO_COST = Collections.emptySortedMap();

    /** Of one kind, first where the figures are worst: the lowest share of service hours, or else the longest time. */
    private static final Comparator<Recommendation> MOST_URGENT_FIRST = Comparator.comparing(Recommendation::kind)
            .thenComparingDouble(Advice::served)
            .thenComparing(Recommendation::time, Comparator.reverseOrder())
            .thenComparing(Recommendation::site, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(Recommendation::site)
            .thenComparing(Recommendation::what, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(Recommendation::what);

    private static final int MANY_AWAY = 3;
    private static final int MOST_NAMED = 6;

    private Advice() {}

    /**
     * The most urgent first.
     *
     * @param rooms that need attention; those of one access point with several busy channels make one piece of advice
     * @param whole all sites together around the clock
     */
    public static List<Recommendation> of(
            List<SiteFigures> sites,
            List<Outage> outages,
            List<Room> rooms,
            Equipment equipment,
            Watch whole,
            Costs costs) {
        List<Recommendation> all = new ArrayList<>();
        sites.forEach(site -> line(site, outages).ifPresent(all::add));
        all.addAll(away(rooms));
        all.addAll(busy(rooms, costs));
        all.addAll(firmware(equipment, "WITHDRAWN", Kind.UPGRADE_WITHDRAWN));
        all.addAll(firmware(equipment, "BEHIND", Kind.UPGRADE_BEHIND));
        support(equipment, costs).ifPresent(all::add);
        cover(equipment).ifPresent(all::add);
        view(sites, whole).ifPresent(all::add);
        all.sort(MOST_URGENT_FIRST);
        return all;
    }

    private static double served(Recommendation one) {
        return one.kind() == Kind.LOOK_AT_LINE ? one.figure().orElse(0) : 0;
    }

    private static Optional<Recommendation> line(SiteFigures site, List<Outage> outages) {
        List<Outage> own = outages.stream()
                .filter(outage -> outage.siteId() == site.siteId() && outage.cause() == Outage.Cause.UPLINK)
                .toList();
        if (own.size() < OFTEN_LINE && !costsTheTarget(site, own)) {
            return Optional.empty();
        }
        OptionalDouble share = site.service().share();
        return Optional.of(new Recommendation(
                Kind.LOOK_AT_LINE,
                site.site(),
                "",
                own.size(),
                share.isEmpty() ? share : OptionalDouble.of(Rounding.of(share.getAsDouble() * 100)),
                sum(own, Outage::length),
                Optional.empty(),
                NO_COST));
    }

    /** The silence of all access points, laid together, as if the whole site had been away: and the target was missed. */
    private static boolean costsTheTarget(SiteFigures site, List<Outage> own) {
        if (own.isEmpty() || site.accessPoints() == 0 || site.met().orElse(true)) {
            return false;
        }
        Duration lost = sum(own, Outage::silence).dividedBy(site.accessPoints());
        return lost.compareTo(site.allowed()) > 0;
    }

    private static Duration sum(List<Outage> outages, Function<Outage, Duration> time) {
        return outages.stream().map(time).reduce(Duration.ZERO, Duration::plus);
    }

    /** One for each access point, or, of a site with many, one for all of them. */
    private static List<Recommendation> away(List<Room> rooms) {
        Map<Long, List<Room>> sites = new LinkedHashMap<>();
        rooms.stream().filter(room -> room.reason() != Room.Reason.BUSY_CHANNEL).forEach(room -> sites.computeIfAbsent(
                        room.siteId(), made -> new ArrayList<>())
                .add(room));
        return sites.values().stream()
                .flatMap(own -> own.size() < MANY_AWAY ? own.stream().map(Advice::device) : Stream.of(devices(own)))
                .toList();
    }

    private static Recommendation devices(List<Room> own) {
        String names = own.stream().limit(MOST_NAMED).map(Room::device).collect(Collectors.joining(", "));
        return new Recommendation(
                Kind.LOOK_AT_DEVICES,
                own.get(0).site(),
                own.size() > MOST_NAMED ? names + ", + " + (own.size() - MOST_NAMED) : names,
                own.stream().mapToInt(Room::times).sum(),
                OptionalDouble.empty(),
                own.stream().map(Room::time).reduce(Duration.ZERO, Duration::plus),
                Optional.empty(),
                NO_COST);
    }

    private static Recommendation device(Room room) {
        return new Recommendation(
                Kind.LOOK_AT_DEVICE,
                room.site(),
                room.device(),
                room.times(),
                OptionalDouble.empty(),
                room.time(),
                Optional.empty(),
                NO_COST);
    }

    private static List<Recommendation> busy(List<Room> rooms, Costs costs) {
        SortedMap<Long, List<Room>> devices = new TreeMap<>();
        rooms.stream()
                .filter(room -> room.reason() == Room.Reason.BUSY_CHANNEL)
                .forEach(room -> devices.computeIfAbsent(room.deviceId(), made -> new ArrayList<>())
                        .add(room));
        return devices.values().stream().map(own -> busyDevice(own, costs)).toList();
    }

    /** Told by the channel that was busy for longest. @param own rooms of one access point, at least one */
    private static Recommendation busyDevice(List<Room> own, Costs costs) {
        Room worst = own.stream().max(Comparator.comparing(Room::time)).orElseThrow();
        return new Recommendation(
                Kind.ADD_ACCESS_POINT,
                worst.site(),
                worst.place().isEmpty() ? worst.device() : worst.place(),
                own.size(),
                worst.figure(),
                worst.time(),
                Optional.empty(),
                costs.ofDevice(worst.deviceId()));
    }

    /** One for each model. */
    private static List<Recommendation> firmware(Equipment equipment, String status, Kind kind) {
        SortedMap<String, Integer> models = new TreeMap<>();
        equipment.versions().forEach(runs -> {
            int devices = runs.statuses().getOrDefault(status, 0);
            if (devices > 0) {
                models.merge(runs.model(), devices, Integer::sum);
            }
        });
        return models.entrySet().stream()
                .map(model -> new Recommendation(
                        kind,
                        "",
                        model.getKey(),
                        model.getValue(),
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.empty(),
                        NO_COST))
                .toList();
    }

    private static Optional<Recommendation> support(Equipment equipment, Costs costs) {
        return equipment.pastSupport() == 0
                ? Optional.empty()
                : Optional.of(new Recommendation(
                        Kind.REPLACE_PAST_SUPPORT,
                        "",
                        "",
                        equipment.pastSupport(),
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        Optional.empty(),
                        costs.pastSupport()));
    }

    private static Optional<Recommendation> cover(Equipment equipment) {
        Optional<LocalDate> first =
                equipment.ending().stream().map(Ending::lastDay).min(Comparator.naturalOrder());
        return first.map(day -> new Recommendation(
                Kind.RENEW_COVER,
                only(equipment.ending().stream().map(Ending::site)),
                "",
                equipment.ending().size(),
                OptionalDouble.empty(),
                Duration.ZERO,
                first,
                equipment.endingCost()));
    }

    private static Optional<Recommendation> view(List<SiteFigures> sites, Watch whole) {
        OptionalDouble coverage = whole.coverage();
        if (coverage.isEmpty() || coverage.getAsDouble() >= ENOUGH_VIEW) {
            return Optional.empty();
        }
        List<String> unseen = sites.stream()
                .filter(site -> site.whole().coverage().orElse(1) < ENOUGH_VIEW)
                .map(SiteFigures::site)
                .toList();
        return Optional.of(new Recommendation(
                Kind.MEND_OUR_VIEW,
                only(unseen.stream()),
                "",
                unseen.size(),
                OptionalDouble.of(Rounding.of(coverage.getAsDouble() * 100)),
                whole.unwatched(),
                Optional.empty(),
                NO_COST));
    }

    /** The site, where it is but one. */
    private static String only(Stream<String> sites) {
        Set<String> names = sites.collect(Collectors.toSet());
        return names.size() == 1 ? names.iterator().next() : "";
    }
}
