package org.roundsman.web.discovery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.discovery.Review;
import org.roundsman.fleet.DeviceKind;

/**
 * What the list sent: one line after the other, the ids of those that are ticked, and of those that are in doubt, which
 * nobody ticks along with all others.
 */
record ReviewForm(
        @RestForm List<String> line,
        @RestForm List<String> name,
        @RestForm List<String> kind,
        @RestForm List<String> place,
        @RestForm List<String> tick,
        @RestForm List<String> doubt,
        @RestForm String act,
        @RestForm String aside) {

    List<Review> entries() {
        List<Review> entries = new ArrayList<>();
        for (int i = 0; line != null && i < line.size(); i++) {
            String id = line.get(i);
            if (id.matches("\\d{1,18}")) {
                boolean ticked = ticks(id);
                entries.add(new Review(Long.parseLong(id), ticked, at(name, i), kind(at(kind, i)), at(place, i)));
            }
        }
        return entries;
    }

    private boolean ticks(String id) {
        boolean now = tick != null && tick.contains(id);
        boolean doubtful = doubt != null && doubt.contains(id);
        return !"none".equals(act) && (now || "all".equals(act) && !doubtful);
    }

    private static String at(List<String> values, int i) {
        return values != null && i < values.size() ? values.get(i) : "";
    }

    private static DeviceKind kind(String name) {
        return Arrays.stream(DeviceKind.values())
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElse(null);
    }
}
