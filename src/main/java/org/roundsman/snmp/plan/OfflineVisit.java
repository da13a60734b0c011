package org.roundsman.snmp.plan;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Predicate;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.Snapshot;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkReading;
import org.roundsman.snmp.WalkReading.Match;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.session.Peer;
import org.roundsman.snmp.walk.WalkExchange;
import org.roundsman.snmp.walk.WalkGroups;
import org.snmp4j.smi.OID;

/** Makes visits to a walk, or to two of them one after the other. Not safe between threads. */
public final class OfflineVisit {

    private static final Agent NOWHERE = new Agent("a stored walk", 161, new SnmpAccess.Community(2, ""));
    private static final SnmpSettings SETTINGS =
            new SnmpSettings(Duration.ofSeconds(1), 0, Duration.ofDays(1), Walk.MOST_VARIABLES, 1);
    /** What the first of two walks counts as on the line of time. */
    private static final long BEGIN_NANOS = 0;

    private final List<Profile> profiles;
    private final RawAnswers names;
    private final WalkExchange exchange = new WalkExchange();
    private final DeviceRecord record = new DeviceRecord(Peer.offline(NOWHERE));

    public OfflineVisit(List<Profile> profiles) {
        this.profiles = profiles;
        this.names = new RawAnswers(profiles, Standard.names());
    }

    /** Visits, and explains what came of it. */
    public WalkReading read(Snapshot first, Optional<Snapshot> later) {
        Visit visit = visit(first, BEGIN_NANOS);
        Snapshot last = first;
        if (later.isPresent()) {
            last = later.get();
            visit = visit(last, BEGIN_NANOS + elapsedNanos(first, last));
        }
        Explaining.Seen seen = new Explaining.Seen(last.walk(), visit, later.isPresent(), names);
        List<WalkReading.Explained> explained = new Explaining(record, seen).explain();
        return new WalkReading(visit, matches(last.walk()), explained, unused(last.walk()));
    }

    /** By the device's own clock where it ran on, else by ours. */
    private static long elapsedNanos(Snapshot first, Snapshot later) {
        long ticks = later.walk().upTime().orElse(0L) - first.walk().upTime().orElse(0L);
        return ticks > 0
                ? ticks * 10_000_000L
                : Math.max(0, Duration.between(first.at(), later.at()).toNanos());
    }

    private Visit visit(Snapshot snapshot, long nanos) {
        Instant at = snapshot.at();
        VisitRun.Setting setting =
                new VisitRun.Setting(exchange, SETTINGS, profiles, names, Clock.fixed(at, ZoneOffset.UTC));
        CompletableFuture<Visit> future = new CompletableFuture<>();
        exchange.answerFrom(snapshot.walk(), nanos);
        VisitRun.start(setting, record, VisitKind.TRACED, future);
        exchange.run();
        return future.join();
    }

    private List<Match> matches(Walk walk) {
        List<Match> matches = new ArrayList<>();
        List<String> applied = record.plan.profiles();
        for (String name : applied) {
            profiles.stream().filter(p -> p.name().equals(name)).forEach(p -> matches.add(match(p, walk, true)));
        }
        profiles.stream().filter(p -> !applied.contains(p.name())).forEach(p -> matches.add(match(p, walk, false)));
        return matches;
    }

    private static Match match(Profile profile, Walk walk, boolean applies) {
        List<String> evidence = new ArrayList<>();
        if (profile.selectors().isEmpty()) {
            evidence.add("without conditions, so to every device");
        }
        for (Profile.Selector selector : profile.selectors()) {
            String kind = selector.kind() == null ? "" : " (" + selector.kind() + ")";
            evidence.add(condition(selector, walk) + kind);
        }
        // What holds comes first.
        evidence.sort(java.util.Comparator.comparing(text -> text.startsWith("no: ")));
        return new Match(profile.name(), profile.about(), applies, evidence);
    }

    private static String condition(Profile.Selector selector, Walk walk) {
        List<String> held = new ArrayList<>();
        List<String> failed = new ArrayList<>();
        if (selector.objectId() != null) {
            String told = walk.objectId();
            boolean holds = !told.isEmpty() && new OID(told).startsWith(selector.objectId());
            (holds ? held : failed)
                    .add("sysObjectID " + (told.isEmpty() ? "is not in the walk" : told)
                            + (holds ? " begins" : ", which does not begin") + " with "
                            + selector.objectId().toDottedString());
        }
        if (selector.answers() != null) {
            boolean holds = walk.holds(selector.answers());
            (holds ? held : failed)
                    .add(
                            holds
                                    ? "it answers " + selector.answers().toDottedString()
                                    : "nothing at or below "
                                            + selector.answers().toDottedString());
        }
        return failed.isEmpty() ? "yes: " + String.join(", and ", held) : "no: " + String.join(", and ", failed);
    }

    private List<UnusedGroup> unused(Walk walk) {
        Set<OID> used = new HashSet<>(Standard.names().keySet());
        record.found.profiles().forEach(profile -> used.addAll(ProfileObjects.of(profile)));
        Predicate<OID> unread = oid -> {
            for (int length = oid.size(); length > 1; length--) {
                if (used.contains(new OID(oid.getValue(), 0, length))) {
                    return false;
                }
            }
            return true;
        };
        return WalkGroups.of(walk, unread);
    }

    /** Every table and group of scalars of a walk. */
    public static List<UnusedGroup> groups(Walk walk) {
        return WalkGroups.of(walk, oid -> true);
    }
}
