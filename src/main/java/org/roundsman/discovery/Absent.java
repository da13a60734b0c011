package org.roundsman.discovery;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.discovery.AddressRanges.Target;
import org.roundsman.discovery.SweepReview.Unanswered;
import org.roundsman.discovery.recognise.Known;
import org.roundsman.discovery.store.SweepTable;
import org.roundsman.measure.Outcome;

/** Devices of the site that a sweep did not meet, and why. */
final class Absent {

    private Absent() {}

    static List<Unanswered> of(
            Sweep sweep, List<FoundDevice> found, List<Known> known, Map<Integer, Integer> done, long siteId) {
        Set<Long> met = found.stream()
                .filter(f -> f.decision().deviceId() != null
                        && f.decision().standing() != Standing.DOUBTFUL
                        && f.decision().standing() != Standing.MOVED)
                .map(f -> f.decision().deviceId())
                .collect(Collectors.toSet());
        AddressRanges ranges = AddressRanges.read(sweep.ranges());
        Map<String, Integer> outcomes = new HashMap<>();
        for (Target target : ranges.targets(sweep.ports())) {
            outcomes.put(target.host() + " " + target.port(), done.get(target.place()));
        }
        List<Unanswered> absent = new ArrayList<>();
        for (Known device : known) {
            if (device.siteId() == siteId && !met.contains(device.deviceId())) {
                String key = device.host() + " " + device.port();
                String reason = outcomes.containsKey(key) ? reason(outcomes.get(key)) : outside(device);
                absent.add(new Unanswered(device.deviceId(), device.name(), device.host(), device.port(), reason));
            }
        }
        return absent;
    }

    private static String outside(Known device) {
        return Ip.read(device.host()).isPresent()
                ? "its address and port are not among those of this sweep"
                : "it is entered by its host name; a sweep compares addresses";
    }

    private static String reason(Integer outcome) {
        if (outcome == null) {
            return "the sweep did not come to its address";
        }
        if (outcome == SweepTable.LEFT_OUT) {
            return "its address is set aside";
        }
        Outcome ended = Outcome.ofCode(outcome);
        return ended == Outcome.ANSWERED ? "another unit answers at its address" : ended.text();
    }
}
