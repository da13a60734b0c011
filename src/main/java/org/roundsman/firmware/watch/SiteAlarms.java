package org.roundsman.firmware.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.SignalSink;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;

/**
 * Raises one alarm for each site where withdrawn firmware runs and clears it when none is left, when the rule is switched off,
 * or when the site is gone. What is raised already is asked each time, so that nothing is raised twice, also after a restart.
 */
public final class SiteAlarms {

    private static final AlarmType TYPE = AlarmType.FIRMWARE_WITHDRAWN;

    /** True as well where an exception holds, the decision was taken back, or the site is gone. */
    private static final String CLEARED = "No device of the site counts as running withdrawn firmware any more.";

    private static final String SWITCHED_OFF = "The rule about withdrawn firmware is switched off for this site.";

    private final FirmwareStates states;
    private final AlarmBook book;
    private final SignalSink sink;
    private final Supplier<RuleSet> rules;

    public SiteAlarms(FirmwareStates states, AlarmBook book, SignalSink sink, Supplier<RuleSet> rules) {
        this.states = states;
        this.book = book;
        this.sink = sink;
        this.rules = rules;
    }

    /** What a site is to say; without severity nothing, since its rule is switched off. */
    private record Wanted(Optional<Severity> severity, String text) {}

    /** Makes the alarms say what is so at this moment. */
    public void look(Instant now) {
        Map<AlarmKey, Wanted> wanted = wanted();
        Map<AlarmKey, OpenAlarm> known = new HashMap<>(book.active());
        known.keySet().removeIf(key -> key.type() != TYPE);
        List<Signal> signals = new ArrayList<>();
        wanted.forEach((key, what) -> {
            if (what.severity().isPresent() && !saysSo(known.get(key), what)) {
                signals.add(new Signal.Raise(key, what.severity().get(), now, now, what.text()));
            }
        });
        for (AlarmKey key : known.keySet()) {
            if (!wanted.containsKey(key)) {
                signals.add(new Signal.Clear(key, now, CLEARED));
            } else if (wanted.get(key).severity().isEmpty()) {
                signals.add(new Signal.Clear(key, now, SWITCHED_OFF));
            }
        }
        if (!signals.isEmpty()) {
            sink.accept(signals);
        }
    }

    private static boolean saysSo(OpenAlarm alarm, Wanted what) {
        return alarm != null
                && what.severity().filter(alarm.severity()::equals).isPresent()
                && alarm.text().equals(what.text());
    }

    private Map<AlarmKey, Wanted> wanted() {
        Map<Long, List<FirmwareState>> sites = new LinkedHashMap<>();
        for (FirmwareState state : states.all(CustomerScope.everyone())) {
            sites.computeIfAbsent(state.place().siteId(), made -> new ArrayList<>())
                    .add(state);
        }
        RuleSet current = rules.get();
        Map<AlarmKey, Wanted> wanted = new LinkedHashMap<>();
        sites.forEach((site, all) -> {
            if (all.stream().anyMatch(SiteTexts::withdrawn)) {
                long customer = all.get(0).place().customerId();
                wanted.put(
                        AlarmKey.of(TYPE, Resource.site(site)),
                        new Wanted(severity(current, customer, site), SiteTexts.of(all)));
            }
        });
        return wanted;
    }

    /** Empty when the rule is switched off there. */
    private static Optional<Severity> severity(RuleSet rules, long customer, long site) {
        RuleValues values = rules.of(TYPE, RuleTarget.site(customer, site));
        return values.enabled() ? Optional.of(values.severity()) : Optional.empty();
    }
}
