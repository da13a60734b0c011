package org.roundsman.alarms.quality;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.roundsman.alarms.QualityReport;
import org.roundsman.alarms.QualityReport.Flood;
import org.roundsman.alarms.QualityReport.Floods;
import org.roundsman.alarms.QualityReport.Load;
import org.roundsman.alarms.QualityReport.Mix;
import org.roundsman.alarms.QualityReport.Noise;
import org.roundsman.alarms.QualityReport.Share;
import org.roundsman.alarms.QualityReport.Stale;
import org.roundsman.alarms.Severity;

/** Works out how good the alarms of a stretch of time were. Of one thread. */
public final class Appraisal {

    private static final int TOP = 10;
    private static final int CROWDED_PERIOD = 10;
    private static final int CROWDED_HOUR = 30;
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration FLEETING = Duration.ofSeconds(60);
    private static final Duration STALE = Duration.ofHours(24);

    private final Instant from;
    private final Instant to;
    private final int technicians;
    private final List<Raised> lasting;
    private final List<Raised> counted;
    private final List<Instant> moments;

    private Appraisal(List<Raised> all, Instant from, Instant to, int technicians) {
        this.from = from;
        this.to = to;
        this.technicians = technicians;
        this.lasting = all.stream()
                .filter(Raised::counts)
                .filter(raised -> raised.cleared()
                        .filter(over -> !over.isAfter(raised.at().plus(STALE)))
                        .isEmpty())
                .toList();
        this.counted = all.stream()
                .filter(Raised::counts)
                .filter(raised -> !raised.at().isBefore(from) && raised.at().isBefore(to))
                .sorted(Comparator.comparing(Raised::at))
                .toList();
        this.moments = counted.stream().map(Raised::at).toList();
    }

    /**
     * The report.
     *
     * @param episodes whatever was active or raised in the stretch, in any order
     * @param technicians at least 1
     */
    public static QualityReport of(List<Raised> episodes, Instant from, Instant to, int technicians) {
        if (technicians < 1 || !from.isBefore(to)) {
            throw new IllegalArgumentException(technicians + " technicians from " + from + " to " + to);
        }
        return new Appraisal(episodes, from, to, technicians).report();
    }

    private QualityReport report() {
        List<Share> alarms = shares(Raised::alarmId, Raised::name, raised -> raised.alarmId());
        return new QualityReport(
                from,
                to,
                technicians,
                load(),
                floods(),
                top(shares(Raised::type, raised -> raised.type().title(), raised -> 0L)),
                top(shares(Raised::deviceId, Raised::device, Raised::deviceId).stream()
                        .filter(share -> share.id() != 0)
                        .toList()),
                top(alarms).stream().mapToDouble(Share::share).sum(),
                noise(alarms),
                new Stale(staleNow(), staleOnWorstDay()),
                mix());
    }

    private Load load() {
        double hours = Duration.between(from, to).toSeconds() / 3600.0;
        double perHour = counted.size() / hours / technicians;
        long crowdedHours = Crowds.crowded(moments, from, HOUR, CROWDED_HOUR * technicians);
        long crowdedPeriods = Crowds.crowded(moments, from, Crowds.TEN_MINUTES, CROWDED_PERIOD * technicians);
        return new Load(
                counted.size(),
                perHour * 24,
                perHour,
                perHour / 6,
                (double) Crowds.most(moments) / technicians,
                crowdedPeriods / (hours * 6),
                crowdedHours,
                crowdedHours / hours);
    }

    private Floods floods() {
        List<Flood> floods = Crowds.floods(moments, technicians, to);
        long seconds =
                floods.stream().mapToLong(flood -> flood.length().toSeconds()).sum();
        return new Floods(floods, (double) seconds / Duration.between(from, to).toSeconds());
    }

    /** The most first. */
    private <K> List<Share> shares(Function<Raised, K> key, Function<Raised, String> name, Function<Raised, Long> id) {
        Map<K, List<Raised>> groups = new LinkedHashMap<>();
        counted.forEach(raised -> groups.computeIfAbsent(key.apply(raised), k -> new ArrayList<>())
                .add(raised));
        return groups.values().stream()
                .map(group -> share(group, name, id))
                .sorted(Comparator.comparingLong(Share::alarms).reversed().thenComparing(Share::name))
                .toList();
    }

    private Share share(List<Raised> group, Function<Raised, String> name, Function<Raised, Long> id) {
        Raised last = group.get(group.size() - 1);
        return new Share(id.apply(last), name.apply(last), group.size(), (double) group.size() / counted.size());
    }

    private static List<Share> top(List<Share> shares) {
        return shares.stream().limit(TOP).toList();
    }

    private Noise noise(List<Share> alarms) {
        Map<Long, List<Instant>> raises = new LinkedHashMap<>();
        counted.forEach(raised ->
                raises.computeIfAbsent(raised.alarmId(), k -> new ArrayList<>()).add(raised.at()));
        List<Share> chattering = alarms.stream()
                .filter(share -> Crowds.chatters(raises.get(share.id())))
                .toList();
        long fleeting = counted.stream()
                .filter(raised -> raised.cleared()
                        .filter(end -> !raised.at().plus(FLEETING).isBefore(end))
                        .isPresent())
                .count();
        return new Noise(chattering, fleeting);
    }

    private static boolean staleIn(Raised raised, Instant begin, Instant end) {
        return raised.at().plus(STALE).isBefore(end)
                && raised.cleared().filter(over -> !over.isAfter(begin)).isEmpty();
    }

    private List<Share> staleNow() {
        return lasting.stream()
                .filter(raised -> raised.at().plus(STALE).isBefore(to))
                .filter(raised ->
                        raised.cleared().filter(over -> !over.isAfter(to)).isEmpty())
                .sorted(Comparator.comparing(Raised::at))
                .map(raised -> new Share(raised.alarmId(), raised.name(), 1, 0))
                .toList();
    }

    private long staleOnWorstDay() {
        long worst = 0;
        LocalDate day = LocalDate.ofInstant(from, ZoneOffset.UTC);
        while (day.atStartOfDay(ZoneOffset.UTC).toInstant().isBefore(to)) {
            Instant begin = day.atStartOfDay(ZoneOffset.UTC).toInstant();
            Instant end = day.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
            Instant until = end.isAfter(to) ? to : end;
            Instant since = begin.isBefore(from) ? from : begin;
            worst = Math.max(
                    worst,
                    lasting.stream()
                            .filter(raised -> staleIn(raised, since, until))
                            .count());
            day = day.plusDays(1);
        }
        return worst;
    }

    private Mix mix() {
        if (counted.isEmpty()) {
            return new Mix(0, 0, 0);
        }
        double high = share(Severity.CRITICAL);
        double medium = share(Severity.MAJOR);
        return new Mix(1 - high - medium, medium, high);
    }

    private double share(Severity severity) {
        return (double) counted.stream()
                        .filter(raised -> raised.highest() == severity)
                        .count()
                / counted.size();
    }
}
