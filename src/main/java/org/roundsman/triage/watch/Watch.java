package org.roundsman.triage.watch;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.readings.DeviceState;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.store.Fleet;

/**
 * Watches the states of all devices, and keeps the alarms of silence, refusal, lost sites and lost view, and what is said of
 * every active alarm, in step with them. Everything follows from what is stored, so that a restart neither repeats nor loses
 * an alarm. Used by one thread.
 */
public final class Watch {

    /** So often all is read again, even when nobody said that it changed. */
    private static final Duration WHOLE = Duration.ofMinutes(1);

    /** The same device is not read or asked out of turn more often. */
    private static final Duration APART = Duration.ofSeconds(60);

    /** Unanswered rounds after which what a device hangs on is looked at, so that its port is known when it is silent. */
    private static final int EARLY = 2;

    private final Tools tools;
    private final Clock clock;
    private final Instant running;
    private final Endings endings = new Endings();
    private final Wirings wirings;
    private final Map<Long, DeviceState> states = new HashMap<>();
    private final Map<AlarmKey, Verdict> told = new HashMap<>();
    private final Map<Long, Instant> portsAsked = new HashMap<>();
    private final Map<Long, Instant> asked = new HashMap<>();
    private Fleet fleet = new Fleet(Map.of(), Map.of());
    private Map<AlarmKey, OpenAlarm> active = Map.of();
    private Optional<Instant> readAll = Optional.empty();
    private boolean recalled;

    public Watch(Tools tools, Clock clock) {
        this.tools = tools;
        this.clock = clock;
        this.running = clock.instant();
        this.wirings = new Wirings(tools);
    }

    /** What was read may be wrong: the next pass reads all again. */
    public void forget() {
        readAll = Optional.empty();
    }

    /**
     * One pass: reads what changed, finds causes, tells the desk.
     *
     * @param touched devices of which readings were stored since the last pass
     * @param alarms whether alarms changed since the last pass
     */
    public void pass(Set<Long> touched, boolean alarms) {
        Instant now = clock.instant();
        read(touched, alarms, now);
        Moment moment = moment(now);
        Draft draft = new Draft();
        new Clearing(moment, endings).work(draft);
        new Refusals(moment).work(draft);
        Optional<Instant> blind = new Sight(moment, running).work(draft, endings);
        Set<Long> sites = inTrouble(moment);
        wirings.only(sites);
        if (blind.isPresent()) {
            blinded(draft, blind.get());
        } else {
            silences(moment, draft, sites);
        }
        others(moment, draft);
        tell(draft);
        planned(now);
        endings.tidy(active, now);
    }

    private void read(Set<Long> touched, boolean alarms, Instant now) {
        boolean whole = readAll.isEmpty() || !readAll.get().plus(WHOLE).isAfter(now);
        if (whole) {
            fleet = tools.fleet().read();
            states.clear();
            states.putAll(tools.states().all());
        } else if (!touched.isEmpty()) {
            states.putAll(tools.states().of(touched));
        }
        if (whole || alarms) {
            active = tools.book().active();
            told.keySet().retainAll(active.keySet());
        }
        if (!recalled) {
            endings.recall(tools.book(), active, now);
            recalled = true;
        }
        readAll = whole ? Optional.of(now) : readAll;
    }

    private Moment moment(Instant now) {
        Map<Long, DeviceLook> looks = new HashMap<>(2 * fleet.devices().size());
        for (Fleet.Device device : fleet.devices().values()) {
            looks.put(
                    device.id(),
                    DeviceLook.of(
                            device.id(),
                            device.name(),
                            device.kind(),
                            device.paused(),
                            device.interval(),
                            Optional.ofNullable(states.get(device.id())),
                            now));
        }
        return new Moment(
                tools,
                fleet,
                states,
                looks,
                active,
                new Severities(tools.rules().get()),
                now);
    }

    /** Sites at which a device is lost: of others there is nothing to find. */
    private Set<Long> inTrouble(Moment moment) {
        Set<Long> sites = new HashSet<>();
        moment.looks().values().stream()
                .filter(DeviceLook::lost)
                .forEach(look -> sites.add(fleet.devices().get(look.deviceId()).siteId()));
        active.values().stream()
                .filter(alarm -> OtherAlarms.isOther(alarm.key().type()))
                .forEach(alarm -> alarm.siteId().ifPresent(sites::add));
        return sites;
    }

    private void silences(Moment moment, Draft draft, Set<Long> sites) {
        for (long id : sites) {
            Fleet.Site site = fleet.sites().get(id);
            if (site != null) {
                SiteWork work = new SiteWork(moment, site, s -> wirings.of(s, moment.now()), endings);
                List<Finding> findings = work.work(draft);
                findings.forEach(finding -> finding.portsWanted().forEach(device -> readPorts(device, moment.now())));
                lookAhead(moment, id);
            }
        }
        askAgain(moment);
    }

    /** What a device hangs on that is about to be silent is read now, so that its port tells at once. */
    private void lookAhead(Moment moment, long siteId) {
        List<DeviceLook> missing = fleet.of(siteId).stream()
                .flatMap(device -> moment.look(device.id()).stream())
                .filter(look -> look.lost() && !look.silent() && look.misses() >= EARLY)
                .toList();
        for (DeviceLook look : missing) {
            List<TreeNode> path = wirings.of(siteId, moment.now()).tree().pathUp(look.deviceId());
            if (path.size() > 1) {
                moment.look(path.get(1).deviceId())
                        .filter(above -> above.standing().heard())
                        .ifPresent(above -> readPorts(above.deviceId(), moment.now()));
            }
        }
    }

    private void readPorts(long device, Instant now) {
        if (due(portsAsked, device, now)) {
            tools.readPorts().accept(device);
        }
    }

    /** What took them down is over: they are asked out of turn, since silent ones have long intervals. */
    private void askAgain(Moment moment) {
        for (long device : endings.devices()) {
            boolean waits = endings.recent(device, moment.now()).isPresent()
                    && moment.look(device).filter(DeviceLook::silent).isPresent();
            if (waits && due(asked, device, moment.now())) {
                tools.askSoon().accept(device);
            }
        }
        endings.fallen().forEach((cause, devices) -> {
            if (moment.look(cause)
                            .filter(look -> someAreBack(moment, look, devices))
                            .isPresent()
                    && due(asked, cause, moment.now())) {
                tools.askSoon().accept(cause);
            }
        });
        asked.values().removeIf(at -> at.plus(APART).isBefore(moment.now()));
        portsAsked.values().removeIf(at -> at.plus(APART).isBefore(moment.now()));
    }

    /** A lost device whose own are coming back is most likely back as well: it is asked out of turn. */
    private static boolean someAreBack(Moment moment, DeviceLook cause, Set<Long> devices) {
        return cause.lost()
                && devices.stream()
                        .flatMap(device -> moment.look(device).stream())
                        .flatMap(look -> look.heard().stream())
                        .anyMatch(heard -> !cause.askedSince(heard));
    }

    private static boolean due(Map<Long, Instant> last, long device, Instant now) {
        Instant before = last.get(device);
        if (before != null && before.plus(APART).isAfter(now)) {
            return false;
        }
        last.put(device, now);
        return true;
    }

    private void blinded(Draft draft, Instant since) {
        active.values().stream()
                .filter(alarm -> !draft.clears(alarm.key()))
                .flatMap(alarm -> SiteWork.blinded(alarm, Sight.VIEW, since).stream())
                .forEach(draft::verdict);
    }

    private void others(Moment moment, Draft draft) {
        OtherAlarms others = new OtherAlarms(moment, endings, site -> wirings.of(site, moment.now()));
        active.values().stream()
                .filter(alarm -> OtherAlarms.isOther(alarm.key().type()))
                .flatMap(alarm -> others.news(alarm).stream())
                .forEach(draft::verdict);
    }

    private void tell(Draft draft) {
        List<Signal> signals = draft.signals();
        Set<AlarmKey> fresh = signals.stream().map(Signal::key).collect(Collectors.toSet());
        List<Verdict> verdicts = new ArrayList<>();
        draft.verdicts().forEach((key, verdict) -> {
            boolean alive = active.containsKey(key) && !draft.clears(key)
                    || draft.raises(key).isPresent();
            if (alive && (fresh.contains(key) || !verdict.equals(told.get(key)))) {
                verdicts.add(verdict);
            }
        });
        if (signals.isEmpty() && verdicts.isEmpty()) {
            return;
        }
        tools.desk().accept(signals, verdicts);
        verdicts.forEach(verdict -> told.put(verdict.key(), verdict));
        active = tools.book().active();
        told.keySet().retainAll(active.keySet());
    }

    private void planned(Instant now) {
        var work = tools.planned().get();
        Set<Long> planned = new HashSet<>();
        Set<Long> stored = new HashSet<>();
        for (OpenAlarm alarm : active.values()) {
            if (alarm.planned()) {
                stored.add(alarm.id());
            }
            boolean covered =
                    alarm.siteId().isPresent() && work.covers(alarm.siteId().getAsLong(), device(alarm), now);
            if (covered) {
                planned.add(alarm.id());
            }
        }
        if (!planned.equals(stored)) {
            tools.desk().plannedNow(planned);
            active = tools.book().active();
        }
    }

    private static java.util.OptionalLong device(OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return resource.kind() == Resource.Kind.DEVICE
                ? java.util.OptionalLong.of(resource.id())
                : java.util.OptionalLong.empty();
    }

    /** Keys of active alarms, for tests and measures. */
    Collection<AlarmKey> activeKeys() {
        return active.keySet();
    }
}
