package org.roundsman.triage.watch;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.DeviceState;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Standing;
import org.roundsman.triage.find.Times;
import org.roundsman.triage.store.Fleet;

/** Devices that answer but reject our credentials. Nobody suffers from it but we. */
record Refusals(Moment moment) {

    void work(Draft draft) {
        for (DeviceLook look : moment.looks().values()) {
            if (look.standing() == Standing.REFUSES) {
                refuses(draft, look);
            }
        }
    }

    private void refuses(Draft draft, DeviceLook look) {
        Fleet.Device device = moment.fleet().devices().get(look.deviceId());
        AlarmKey key = AlarmKey.of(AlarmType.CREDENTIALS_REFUSED, Resource.device(look.deviceId()));
        Optional<Severity> severity = moment.severities()
                .of(AlarmType.CREDENTIALS_REFUSED, moment.fleet().target(device));
        Optional<OpenAlarm> known = moment.alarm(key);
        if (severity.isEmpty()) {
            known.ifPresent(alarm -> draft.signal(new Signal.Clear(key, moment.now(), "The rule was switched off.")));
            return;
        }
        DeviceState state = moment.states().get(look.deviceId());
        String why =
                state.outcome().kind() == Outcome.Kind.REFUSED ? state.outcome().text() : "it rejected our credentials";
        if (known.filter(alarm -> alarm.severity() == severity.get()).isEmpty()) {
            draft.signal(new Signal.Raise(
                    key, severity.get(), state.since(), moment.now(), "It answers, but rejects us: " + why + "."));
        }
        Times times = new Times(moment.fleet().sites().get(device.siteId()).zone(), moment.now());
        draft.verdict(new Verdict(
                key,
                CauseKind.CREDENTIALS_REFUSED,
                Optional.empty(),
                List.of(
                        "It answers since " + times.second(state.since()) + ", but: " + why + ".",
                        "So power, cable and line are good."),
                Impact.unknown(0, false),
                Set.of(),
                true));
    }
}
