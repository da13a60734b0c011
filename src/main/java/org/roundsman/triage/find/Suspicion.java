package org.roundsman.triage.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.Sureness;

/**
 * The topmost lost element of a branch, and what is thought of it.
 *
 * @param explains lost devices below it, without itself
 * @param alike it may have been lost together with others of its sort, to something that they share
 */
record Suspicion(
        DeviceLook look,
        List<DeviceLook> explains,
        CauseKind cause,
        List<String> evidence,
        Sureness sureness,
        boolean settled,
        boolean alike,
        Set<Long> portsWanted) {

    AlarmKey key() {
        return Scene.silence(look.deviceId());
    }

    Suspicion unsettled() {
        return new Suspicion(look, explains, cause, evidence, sureness, false, alike, portsWanted);
    }

    /** With more to say. */
    Suspicion saying(CauseKind other, List<String> sentences, Sureness sure) {
        return new Suspicion(look, explains, other, sentences, sure, settled, alike, portsWanted);
    }

    /** The finding of its own alarm. */
    Finding finding(Optional<AlarmKey> causedBy, Set<Long> besides) {
        Set<Long> affected = new HashSet<>(besides);
        explains.forEach(each -> affected.add(each.deviceId()));
        affected.remove(look.deviceId());
        Instant began = look.lostSince().orElseThrow();
        return new Finding(key(), cause, causedBy, began, evidence, affected, sureness, settled, portsWanted);
    }

    /** The findings of those that it explains and that have an alarm of their own. */
    List<Finding> pointing(Scene scene) {
        Words words = new Words(scene);
        List<Finding> findings = new ArrayList<>();
        for (DeviceLook each : explains) {
            if (each.silent()) {
                findings.add(new Finding(
                        Scene.silence(each.deviceId()),
                        cause,
                        Optional.of(key()),
                        each.lostSince().orElseThrow(),
                        List.of(
                                words.lastAnswered(each),
                                "It hangs below " + Words.called(look)
                                        + ", which does not answer either: that explains it."),
                        Set.of(),
                        sureness,
                        settled,
                        Set.of()));
            }
        }
        return findings;
    }
}
