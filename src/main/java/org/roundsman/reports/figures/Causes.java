package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.figures.SitePeriod.Point;

/**
 * Finds what was behind the silence of an access point: the alarm that began it all, of those whose time it shares and that
 * concern the access point itself, or what it hangs on. Immutable.
 */
final class Causes {

    private static final Set<AlarmType> OF_SILENCE =
            Set.of(AlarmType.UPLINK_LOST, AlarmType.DEVICE_SILENT, AlarmType.FLAPPING, AlarmType.DEVICE_RESTARTED);

    /** Episodes that nothing explains, by access point. */
    private final Map<Long, Set<PastEpisode>> roots = new HashMap<>();

    /**
     * @param episodes of the customer, in a fixed order
     */
    Causes(SitePeriod site, List<PastEpisode> episodes) {
        Map<Long, PastEpisode> known = new LinkedHashMap<>();
        episodes.stream()
                .filter(episode -> OF_SILENCE.contains(episode.type()))
                .forEach(episode -> known.put(episode.id(), episode));
        for (PastEpisode episode : known.values()) {
            root(episode, known).ifPresent(root -> devices(episode, site)
                    .forEach(device -> roots.computeIfAbsent(device, made -> new HashSet<>())
                            .add(root)));
        }
    }

    /** The end of the chain; empty where that is none of the customer's, such as our own blindness. */
    private static Optional<PastEpisode> root(PastEpisode episode, Map<Long, PastEpisode> known) {
        PastEpisode at = episode;
        Set<Long> seen = new HashSet<>();
        while (at != null && at.explainedBy().isPresent()) {
            at = seen.add(at.id()) ? known.get(at.explainedBy().getAsLong()) : null;
        }
        return Optional.ofNullable(at);
    }

    private static List<Long> devices(PastEpisode episode, SitePeriod site) {
        List<Long> devices = new ArrayList<>(episode.affected());
        episode.deviceId().ifPresent(devices::add);
        if (episode.type() == AlarmType.UPLINK_LOST
                && episode.siteId().isPresent()
                && episode.siteId().getAsLong() == site.siteId()) {
            site.points().stream().map(Point::deviceId).forEach(devices::add);
        }
        return devices;
    }

    /**
     * What was behind a silence: the one that shares the most time with it. Of several what concerns more than the device alone
     * comes first, then the earlier one.
     */
    Optional<PastEpisode> of(Silence silence) {
        Comparator<PastEpisode> best = Comparator.comparing((PastEpisode root) -> shared(root, silence))
                .reversed()
                .thenComparing(root -> rank(root, silence.deviceId()))
                .thenComparing(PastEpisode::began)
                .thenComparing(PastEpisode::id);
        return roots.getOrDefault(silence.deviceId(), Set.of()).stream()
                .filter(root -> shared(root, silence).compareTo(Duration.ZERO) > 0)
                .min(best);
    }

    private static Duration shared(PastEpisode root, Silence silence) {
        Instant from = root.began().isAfter(silence.from()) ? root.began() : silence.from();
        Instant end = root.cleared().filter(silence.to()::isAfter).orElse(silence.to());
        return Duration.between(from, end);
    }

    private static int rank(PastEpisode root, long device) {
        boolean own = root.deviceId().isPresent() && root.deviceId().getAsLong() == device;
        return switch (root.type()) {
            case UPLINK_LOST -> 0;
            case DEVICE_SILENT -> own ? 3 : 1;
            case FLAPPING -> 2;
            default -> 4;
        };
    }

    /** The word of a report for what was worked out. */
    static Cause word(PastEpisode root) {
        return switch (root.cause()) {
            case UPLINK_LOST -> Cause.UPLINK;
            case SWITCH_LOST -> Cause.SWITCH;
            case SWITCH_POWER -> Cause.SWITCH_POWER;
            case PORT_NOT_DELIVERING -> Cause.PORT_POWER;
            case LINK_DOWN, NO_POWER_DRAWN -> Cause.CABLE;
            // whoever passes traffic on takes nobody down; where silence is laid to it, it had been lost itself before
            case DEVICE_LOST, MANAGEMENT_LOST -> Cause.DEVICE;
            case RESTARTED -> Cause.RESTART;
            case FLAPPING -> Cause.COMES_AND_GOES;
            case ITSELF -> itself(root.type());
            default -> Cause.NOT_SURE;
        };
    }

    /** Whether it is behind silence again and again. */
    static boolean comesAndGoes(PastEpisode root) {
        return word(root) == Cause.COMES_AND_GOES;
    }

    /** What the alarm itself says; of a silence it says nothing as long as nobody looked into it. */
    private static Cause itself(AlarmType type) {
        return switch (type) {
            case UPLINK_LOST -> Cause.UPLINK;
            case FLAPPING -> Cause.COMES_AND_GOES;
            case DEVICE_RESTARTED -> Cause.RESTART;
            default -> Cause.NOT_WORKED_OUT;
        };
    }
}
