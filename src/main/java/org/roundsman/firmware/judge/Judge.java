package org.roundsman.firmware.judge;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.firmware.Comparison;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.PolicyException;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.Release.Stand;
import org.roundsman.firmware.Running;

/**
 * Judges what devices run by the policy, at one moment. A withdrawn release, or one below the minimum of a security fix, beats
 * all but a live exception. For one thread.
 */
public final class Judge {

    private final Map<Long, LinePolicy> lines = new HashMap<>();
    private final Map<Long, Set<Long>> pilotSites = new HashMap<>();
    private final Map<String, Effective> effective = new HashMap<>();
    private final Map<String, Verdict> verdicts = new HashMap<>();
    private final Map<ZoneId, LocalDate> days = new HashMap<>();
    private final Instant now;

    public Judge(Collection<LinePolicy> policies, Instant now) {
        this.now = now;
        for (LinePolicy policy : policies) {
            lines.put(policy.lineId(), policy);
            pilotSites.put(
                    policy.lineId(),
                    policy.pilots().stream()
                            .map(LinePolicy.PilotSite::siteId)
                            .collect(Collectors.toCollection(HashSet::new)));
        }
    }

    public FirmwareState judge(Running device) {
        if (device.place().lineId().isEmpty()) {
            return unknown(
                    device,
                    device.place().modelId().isEmpty()
                            ? "no policy: its model is not known"
                            : "no policy: its model has no line of firmware");
        }
        if (device.otherKind()) {
            return unknown(device, "its model is of another kind");
        }
        LinePolicy policy = lines.get(device.place().lineId().getAsLong());
        if (policy == null || policy.empty()) {
            return unknown(
                    device,
                    "no policy: nothing is decided about " + device.place().line());
        }
        if (device.version().isEmpty()) {
            return unknown(device, "no version was read");
        }
        String key = policy.lineId() + "/" + device.place().modelId().orElse(0);
        Effective rules = effective.computeIfAbsent(
                key, made -> new Effective(policy, device.place().modelId()));
        Verdict plain =
                verdicts.computeIfAbsent(key + "/" + device.version(), made -> plain(rules, policy, device.version()));
        Verdict there = atPilotSite(plain, rules, policy, device);
        Verdict last = excepted(there, rules, policy, device);
        return state(device, last, rules, target(rules, policy, device));
    }

    /** What the policy says where nothing special holds. */
    private static Verdict plain(Effective rules, LinePolicy policy, String version) {
        Optional<Release> known = rules.of(version).map(Effective.Entry::release);
        Effective.Security security = rules.security(version);
        String missing = security.missing().stream()
                .map(minimum -> "older than " + minimum.version() + ", the minimum for " + minimum.identifier())
                .collect(Collectors.joining("; "));
        if (known.isPresent() && known.get().stand() == Stand.WITHDRAWN) {
            Release release = known.get();
            String words =
                    version + " was withdrawn on " + release.withdrawnOn().orElseThrow() + ": " + release.reason();
            String all = missing.isEmpty() ? words : words + "; " + missing;
            return new Verdict(FirmwareStatus.WITHDRAWN, all, !missing.isEmpty(), true);
        }
        if (!missing.isEmpty()) {
            return new Verdict(FirmwareStatus.WITHDRAWN, version + " is " + missing, true, true);
        }
        if (security.cannot().isPresent()) {
            return Verdict.unknown(security.cannot().get());
        }
        return known.flatMap(Judge::running).orElseGet(() -> compared(rules, policy, version));
    }

    private static Optional<Verdict> running(Release release) {
        return switch (release.stand()) {
            case RECOMMENDED -> Optional.of(Verdict.of(FirmwareStatus.CURRENT, "the recommended release"));
            case ACCEPTED -> Optional.of(Verdict.of(FirmwareStatus.CURRENT, "an accepted release"));
            case PILOT, WITHDRAWN -> Optional.empty();
        };
    }

    private static Verdict compared(Effective rules, LinePolicy policy, String version) {
        Optional<Release> recommended = rules.only(Stand.RECOMMENDED).map(Effective.Entry::release);
        if (recommended.isEmpty()) {
            return Verdict.unknown(
                    rules.withdrawnHere(Stand.RECOMMENDED)
                            ? "the recommended release is withdrawn for this model"
                            : "no policy: no release of " + policy.line() + " is recommended");
        }
        String target = recommended.get().version();
        Comparison comparison = rules.compare(version, target);
        return switch (comparison.outcome()) {
            case OLDER -> Verdict.of(FirmwareStatus.BEHIND, version + " is older than " + target);
            case NEWER -> Verdict.of(FirmwareStatus.AHEAD_OF_POLICY, version + " is newer than " + target);
            case SAME -> Verdict.of(FirmwareStatus.CURRENT, "the recommended release");
            case CANNOT_BE_COMPARED -> Verdict.unknown(comparison.reason());
        };
    }

    private Verdict atPilotSite(Verdict plain, Effective rules, LinePolicy policy, Running device) {
        Optional<Release> pilot = pilot(rules, policy, device);
        boolean runsIt = pilot.isPresent() && rules.same(pilot.get().version(), device.version());
        if (pilot.isEmpty() || plain.status() == FirmwareStatus.WITHDRAWN) {
            return plain;
        }
        if (runsIt && rules.security(device.version()).cannot().isEmpty()) {
            return Verdict.of(FirmwareStatus.CURRENT, "the pilot release, which this site runs first");
        }
        return plain.status() == FirmwareStatus.CURRENT
                ? Verdict.of(
                        FirmwareStatus.CURRENT,
                        plain.reason() + "; the pilot release " + pilot.get().version() + " is still to come here")
                : plain;
    }

    private Optional<Release> pilot(Effective rules, LinePolicy policy, Running device) {
        return pilotSites.get(policy.lineId()).contains(device.place().siteId())
                ? rules.only(Stand.PILOT).map(Effective.Entry::release)
                : Optional.empty();
    }

    private Verdict excepted(Verdict verdict, Effective rules, LinePolicy policy, Running device) {
        if (!verdict.canBeExcepted()) {
            return verdict;
        }
        LocalDate today = today(device);
        return policy.exceptions().stream()
                .filter(one -> one.customerId() == device.place().customerId())
                .filter(one -> !today.isAfter(one.lastDay()))
                .filter(one -> one.version().isEmpty() || rules.same(one.version(), device.version()))
                .findFirst()
                .map(one -> except(verdict, one))
                .orElse(verdict);
    }

    private static Verdict except(Verdict verdict, PolicyException one) {
        return new Verdict(
                FirmwareStatus.EXCEPTED,
                "excepted until " + one.lastDay() + ": " + ended(one.reason()) + " Without that it would be "
                        + verdict.status().word() + ": " + verdict.reason(),
                verdict.security(),
                false);
    }

    /** People end what they write with a full stop or not. */
    private static String ended(String words) {
        return words.matches("(?s).*[.!?…]") ? words : words + ".";
    }

    private LocalDate today(Running device) {
        return days.computeIfAbsent(
                device.place().zone(), zone -> now.atZone(zone).toLocalDate());
    }

    /** Nobody is sent to a release that lacks a security fix itself, nor away from a pilot release that has them all. */
    private Optional<Release> target(Effective rules, LinePolicy policy, Running device) {
        return rules.only(Stand.RECOMMENDED)
                .map(Effective.Entry::release)
                .filter(release -> rules.security(release.version()).missing().isEmpty())
                .filter(release -> pilot(rules, policy, device)
                        .filter(pilot -> rules.same(pilot.version(), device.version()))
                        .filter(pilot ->
                                rules.security(pilot.version()).missing().isEmpty())
                        .isEmpty());
    }

    /** Why a withdrawn release has no other to go to, after its own reason; else nothing. */
    private static String lacking(Effective rules, Verdict verdict) {
        if (verdict.status() != FirmwareStatus.WITHDRAWN) {
            return "";
        }
        return rules.only(Stand.RECOMMENDED)
                .map(entry -> entry.release().version())
                .flatMap(version -> rules.security(version).missing().stream()
                        .findFirst()
                        .map(minimum -> "; " + version + " lacks " + minimum.identifier() + "; decide about another"))
                .orElse("");
    }

    private FirmwareState state(Running device, Verdict verdict, Effective rules, Optional<Release> target) {
        boolean older = target.isPresent()
                && rules.compare(device.version(), target.get().version()).outcome() == Comparison.Outcome.OLDER
                && verdict.status() != FirmwareStatus.CURRENT;
        OptionalLong behind = older && target.get().releasedOn().isPresent()
                ? OptionalLong.of(Math.max(
                        0, ChronoUnit.DAYS.between(target.get().releasedOn().get(), today(device))))
                : OptionalLong.empty();
        return new FirmwareState(
                device.deviceId(),
                device.device(),
                device.kind(),
                verdict.status(),
                device.version(),
                device.since(),
                verdict.reason() + lacking(rules, verdict),
                verdict.security(),
                target.map(Release::version).orElse(""),
                target.filter(release -> rules.same(release.version(), device.version()))
                        .isPresent(),
                behind,
                false,
                device.place());
    }

    private static FirmwareState unknown(Running device, String reason) {
        return new FirmwareState(
                device.deviceId(),
                device.device(),
                device.kind(),
                FirmwareStatus.NOT_KNOWN,
                device.version(),
                device.since(),
                reason,
                false,
                "",
                false,
                OptionalLong.empty(),
                false,
                device.place());
    }
}
