package org.roundsman.triage.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.rules.RuleTarget;
import org.roundsman.topology.ReadNote;
import org.roundsman.topology.SiteWiring;
import org.roundsman.triage.CauseFinder;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.SiteSituation;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/** What one pass makes of the silence at one site: alarms that begin, verdicts on those that are active. */
final class SiteWork {

    private static final String BACK = "Back already of what it took down: ";
    private static final Set<CauseKind> OF_PORT =
            Set.of(CauseKind.PORT_NOT_DELIVERING, CauseKind.NO_POWER_DRAWN, CauseKind.LINK_DOWN);

    private final Moment moment;
    private final Fleet.Site site;
    private final LongFunction<SiteWiring> wirings;
    private final Endings endings;
    private final Times times;

    SiteWork(Moment moment, Fleet.Site site, LongFunction<SiteWiring> wirings, Endings endings) {
        this.moment = moment;
        this.site = site;
        this.wirings = wirings;
        this.endings = endings;
        this.times = new Times(site.zone(), moment.now());
    }

    /**
     * Raises and judges. Ends of alarms come before, so that what is just over is known.
     *
     * @return what was found
     */
    List<Finding> work(Draft draft) {
        Map<Long, DeviceLook> looks = looks();
        if (looks.values().stream().noneMatch(DeviceLook::silent)) {
            return List.of();
        }
        List<Finding> findings = CauseFinder.find(situation(looks));
        findings.forEach(endings::remember);
        findings.forEach(finding -> raise(draft, finding));
        findings.forEach(finding -> draft.verdict(verdict(draft, finding, looks)));
        return findings;
    }

    private Map<Long, DeviceLook> looks() {
        Map<Long, DeviceLook> looks = new HashMap<>();
        for (Fleet.Device device : moment.fleet().of(site.id())) {
            moment.look(device.id()).ifPresent(look -> looks.put(device.id(), sinceItsAlarm(look)));
        }
        return looks;
    }

    /** When we were not looking in between, its alarm remembers since when it is silent. */
    private DeviceLook sinceItsAlarm(DeviceLook look) {
        return moment.alarm(silence(look.deviceId()))
                .map(alarm -> look.lostSince(alarm.began()))
                .orElse(look);
    }

    private SiteSituation situation(Map<Long, DeviceLook> looks) {
        SiteWiring wiring = wirings.apply(site.id());
        Map<Long, Instant> read = new HashMap<>();
        wiring.reads().forEach((device, note) -> statesAt(note).ifPresent(at -> read.put(device, at)));
        return new SiteSituation(
                site.id(),
                site.zone(),
                wiring.tree(),
                looks,
                read,
                endings.of(looks.keySet()),
                endings.fallen(looks),
                moment.now());
    }

    /** A full reading brings the states as well. */
    private static Optional<Instant> statesAt(ReadNote note) {
        return java.util.stream.Stream.concat(note.readAt().stream(), note.stateAt().stream())
                .max(Instant::compareTo);
    }

    private void raise(Draft draft, Finding finding) {
        // Of a device that has not come back since we were blind nothing can be said yet.
        if (finding.causedBy().filter(key -> key.type() == AlarmType.VIEW_LOST).isPresent()) {
            return;
        }
        Optional<Severity> severity = severity(finding);
        Optional<OpenAlarm> known = moment.alarm(finding.key()).filter(alarm -> !draft.clears(finding.key()));
        boolean same = known.isPresent()
                && severity.filter(s -> s == known.get().severity()).isPresent();
        if (severity.isPresent() && !same) {
            draft.signal(new Signal.Raise(finding.key(), severity.get(), finding.began(), moment.now(), text(finding)));
        } else if (severity.isEmpty() && known.isPresent()) {
            draft.signal(new Signal.Clear(finding.key(), moment.now(), "The rule was switched off."));
        }
    }

    private Optional<Severity> severity(Finding finding) {
        AlarmKey key = finding.key();
        if (key.type() == AlarmType.UPLINK_LOST) {
            return moment.severities().of(AlarmType.UPLINK_LOST, RuleTarget.site(site.customerId(), site.id()));
        }
        return Optional.ofNullable(moment.fleet().devices().get(key.resource().id()))
                .flatMap(device -> silent(finding.cause(), device));
    }

    private Optional<Severity> silent(CauseKind cause, Fleet.Device device) {
        RuleTarget target = moment.fleet().target(device);
        return cause == CauseKind.MANAGEMENT_LOST
                ? moment.severities().managementLost(target)
                : moment.severities().silent(target, device.kind());
    }

    private String text(Finding finding) {
        String since = "since " + times.second(finding.began());
        if (finding.key().type() == AlarmType.UPLINK_LOST) {
            return "Nothing at the site answers " + since + ".";
        }
        return "No answer " + since
                + moment.look(finding.key().resource().id())
                        .flatMap(DeviceLook::outcome)
                        .map(outcome -> ": " + outcome.text())
                        .orElse("")
                + ".";
    }

    /** Who came back before its cause did was lost to it too, and counts until that ends. */
    private Verdict verdict(Draft draft, Finding finding, Map<Long, DeviceLook> looks) {
        Optional<OpenAlarm> before = moment.alarm(finding.key())
                .filter(alarm -> !draft.clears(finding.key()) && onTheMend(alarm.cause(), finding));
        Set<Long> taken = endings.taken(finding, looks);
        Set<Long> suffer = new HashSet<>(taken);
        if (finding.key().resource().kind() == Resource.Kind.DEVICE) {
            suffer.add(finding.key().resource().id());
        }
        return new Verdict(
                finding.key(),
                before.map(OpenAlarm::cause).orElse(finding.cause()),
                finding.causedBy(),
                withBack(
                        before.map(alarm -> withAgain(alarm.evidence())).orElse(finding.evidence()),
                        taken.size() - finding.affected().size(),
                        taken.size()),
                moment.tools().impacts().of(site.id(), suffer, moment.now()),
                taken,
                finding.settled());
    }

    /** The other sentences count who is silent now; the impact counts all. */
    private static List<String> withBack(List<String> evidence, int back, int all) {
        List<String> said = new ArrayList<>(evidence);
        said.removeIf(sentence -> sentence.startsWith(BACK));
        if (back > 0) {
            said.add(BACK + back + " of " + all + ". The impact counts all of them.");
        }
        return said;
    }

    /**
     * Whether the port that was the cause works again while the device behind it still starts: it stays the cause, or the past
     * would know of each such fault only that a device was lost.
     */
    private static boolean onTheMend(CauseKind before, Finding finding) {
        CauseKind now = finding.cause();
        boolean port = OF_PORT.contains(before) && now == CauseKind.DEVICE_LOST;
        boolean power = before == CauseKind.SWITCH_POWER && now == CauseKind.SWITCH_LOST;
        return finding.causedBy().isEmpty() && (port || power);
    }

    private static List<String> withAgain(List<String> evidence) {
        if (evidence.contains(Finding.WORKS_AGAIN)) {
            return evidence;
        }
        List<String> longer = new ArrayList<>(evidence);
        longer.add(Finding.WORKS_AGAIN);
        return longer;
    }

    /** While we are blind nothing new is said, but what fell silent with our view points to it. */
    static Optional<Verdict> blinded(OpenAlarm alarm, AlarmKey view, Instant since) {
        boolean ours =
                alarm.key().type() == AlarmType.DEVICE_SILENT || alarm.key().type() == AlarmType.UPLINK_LOST;
        boolean with = !alarm.began().isBefore(since.minusSeconds(10));
        return ours && with
                ? Optional.of(new Verdict(
                        alarm.key(),
                        CauseKind.VIEW_LOST,
                        Optional.of(view),
                        List.of("It fell silent at the same time as sites everywhere: it is our view that was lost."),
                        alarm.impact(),
                        Set.of(),
                        true))
                : Optional.empty();
    }

    private static AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }
}
