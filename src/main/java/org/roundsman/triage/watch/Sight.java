package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.rules.RuleTarget;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/** Whether we see anything at all: raises, judges and clears the alarm of our own view. */
final class Sight {

    static final AlarmKey VIEW = AlarmKey.of(AlarmType.VIEW_LOST, Resource.service());

    private final Moment moment;
    private final Instant running;
    private final Map<Long, Long> siteOf = new HashMap<>();

    /**
     * @param running since when this process watches
     */
    Sight(Moment moment, Instant running) {
        this.moment = moment;
        this.running = running;
        moment.fleet().devices().values().forEach(device -> siteOf.put(device.id(), device.siteId()));
    }

    /** Whether we are blind, after this pass; since when. */
    Optional<Instant> work(Draft draft, Endings endings) {
        Optional<OpenAlarm> known = moment.alarm(VIEW);
        Optional<Blindness.Blind> blind = blind();
        Optional<Severity> severity = moment.severities().of(AlarmType.VIEW_LOST, RuleTarget.service());
        if (known.isPresent() && (blind.isEmpty() && sees(known.get()) || severity.isEmpty())) {
            over(draft, endings, known.get(), severity.isEmpty());
            return Optional.empty();
        }
        if (severity.isEmpty() || blind.isEmpty()) {
            return known.map(OpenAlarm::began);
        }
        if (known.isEmpty()) {
            draft.signal(new Signal.Raise(VIEW, severity.get(), blind.get().since(), moment.now(), text(blind.get())));
        }
        draft.verdict(verdict(blind.get()));
        return Optional.of(known.map(OpenAlarm::began).orElse(blind.get().since()));
    }

    private Optional<Blindness.Blind> blind() {
        Collection<DeviceLook> looks = moment.looks().values();
        Optional<Blindness.Blind> blind = Blindness.of(looks, siteOf);
        if (blind.isPresent() || moment.tools().polled().getAsInt() == 0) {
            return blind;
        }
        List<DeviceLook> wanted = looks.stream()
                .filter(look -> !moment.fleet().devices().get(look.deviceId()).paused())
                .toList();
        return Blindness.stalled(wanted, siteOf, running, moment.now());
    }

    /** Something was heard since. */
    private boolean sees(OpenAlarm alarm) {
        return moment.looks().values().stream()
                .anyMatch(look -> look.standing().heard() && look.heardAfter(alarm.began()));
    }

    private void over(Draft draft, Endings endings, OpenAlarm alarm, boolean switchedOff) {
        Set<Long> lost = moment.looks().values().stream()
                .filter(look -> look.lost() && !look.lostSince().orElseThrow().isBefore(alarm.began()))
                .map(DeviceLook::deviceId)
                .collect(Collectors.toSet());
        String text = switchedOff
                ? "The rule was switched off."
                : "We see again after " + Summary.words(Duration.between(alarm.began(), moment.now()))
                        + ". What devices did in that time is not known.";
        draft.signal(new Signal.Clear(VIEW, moment.now(), text));
        if (!switchedOff) {
            endings.add(alarm, lost, moment.now());
        }
    }

    private String text(Blindness.Blind blind) {
        String since = new Times(ZoneOffset.UTC, moment.now()).second(blind.since()) + " UTC";
        return blind.stalled()
                ? "No round was stored since " + since + ": our own rounds, or storing them, stand still."
                : "No device anywhere answered since " + since + ": the fault is most likely on our side.";
    }

    private Verdict verdict(Blindness.Blind blind) {
        List<String> evidence = new ArrayList<>();
        if (blind.stalled()) {
            evidence.add("Every device is overdue, and none was asked: this is not about any of the " + blind.allSites()
                    + " sites.");
        } else {
            evidence.add("Devices of " + blind.sites() + " of " + blind.allSites()
                    + " sites gave no answer when they were asked, and no other one did.");
            evidence.add("Sites do not share a line, so it is ours: nothing new is said of any device meanwhile.");
        }
        int points = (int) blind.devices().stream()
                .map(id -> moment.fleet().devices().get(id))
                .filter(device -> device != null && device.kind() == DeviceKind.ACCESS_POINT)
                .map(Fleet.Device::id)
                .count();
        return new Verdict(
                VIEW, CauseKind.VIEW_LOST, Optional.empty(), evidence, Impact.unknown(points, false), Set.of(), true);
    }
}
