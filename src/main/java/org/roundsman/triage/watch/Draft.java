package org.roundsman.triage.watch;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;

/** What one pass has to tell the desk. */
final class Draft {

    private final Map<AlarmKey, Signal> signals = new LinkedHashMap<>();
    private final Map<AlarmKey, Verdict> verdicts = new LinkedHashMap<>();

    void signal(Signal signal) {
        signals.put(signal.key(), signal);
    }

    void verdict(Verdict verdict) {
        verdicts.put(verdict.key(), verdict);
    }

    /** Whether it is cleared in this pass. */
    boolean clears(AlarmKey key) {
        return signals.get(key) instanceof Signal.Clear;
    }

    /** The severity with which it is raised in this pass. */
    Optional<Severity> raises(AlarmKey key) {
        return signals.get(key) instanceof Signal.Raise raise ? Optional.of(raise.severity()) : Optional.empty();
    }

    List<Signal> signals() {
        return new ArrayList<>(signals.values());
    }

    Map<AlarmKey, Verdict> verdicts() {
        return verdicts;
    }
}
