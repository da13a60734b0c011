package org.roundsman.triage.find;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.triage.DeviceLook;

/** Sentences that evidence is made of. */
final class Words {

    private static final int NAMED = 3;

    private final Scene scene;

    Words(Scene scene) {
        this.scene = scene;
    }

    static String called(DeviceLook look) {
        return look.kind().word() + " " + look.name();
    }

    /** {@code Gateway gw-1 last answered at 10:41:12.} */
    String lastAnswered(DeviceLook look) {
        return capital(called(look))
                + look.heard()
                        .map(at -> " last answered at " + scene.times().second(at) + ".")
                        .orElse(" never answered so far.");
    }

    /** {@code sw-2, on which it hangs, answered at 10:44:02.} */
    String answered(DeviceLook look, String what) {
        return look.name() + what + " answered at "
                + look.heard().map(scene.times()::second).orElse("a time not known") + ".";
    }

    /** One sentence for each kind: {@code 14 of 14 access points silent since 10:41.} */
    List<String> counts(Collection<DeviceLook> lost, Collection<DeviceLook> of, String where) {
        List<String> sentences = new ArrayList<>();
        for (DeviceKind kind : List.of(DeviceKind.NETWORK_SWITCH, DeviceKind.ACCESS_POINT)) {
            List<DeviceLook> gone = only(lost, kind);
            if (!gone.isEmpty()) {
                boolean all = gone.stream().allMatch(DeviceLook::silent);
                sentences.add(gone.size() + " of " + counted(only(of, kind).size(), kind) + where
                        + (all ? " silent" : " silent or missing rounds") + " since "
                        + scene.times().minute(Scene.firstMiss(gone)) + ".");
            }
        }
        return sentences;
    }

    /** Those that were silent before, so that something else is behind them. */
    Optional<String> before(Collection<DeviceLook> earlier) {
        if (earlier.isEmpty()) {
            return Optional.empty();
        }
        String names = earlier.stream()
                .limit(NAMED)
                .map(look -> look.name() + " (since "
                        + scene.times().minute(look.lostSince().orElseThrow()) + ")")
                .collect(Collectors.joining(", "));
        int more = earlier.size() - NAMED;
        return Optional.of(
                "Silent before, for another reason: " + names + (more > 0 ? " and " + more + " more" : "") + ".");
    }

    /** Those that say nothing since nobody asks them. */
    Optional<String> unwatched() {
        long count = scene.situation().devices().size() - scene.watched().size();
        return count == 0
                ? Optional.empty()
                : Optional.of(
                        count == 1
                                ? "One device of the site is paused or not watched and says nothing."
                                : count + " devices of the site are paused or not watched and say nothing.");
    }

    static List<DeviceLook> only(Collection<DeviceLook> looks, DeviceKind kind) {
        return looks.stream().filter(look -> look.kind() == kind).toList();
    }

    static String counted(int count, DeviceKind kind) {
        return count + " " + kind.word() + (count == 1 ? "" : kind == DeviceKind.NETWORK_SWITCH ? "es" : "s");
    }

    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
