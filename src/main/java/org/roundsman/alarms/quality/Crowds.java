package org.roundsman.alarms.quality;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.roundsman.alarms.QualityReport.Flood;

/**
 * Many alarms within a short time. Bounds as in ISA-18.2 and IEC 62682, from memory. Two moments that lie exactly a window
 * apart are within it.
 */
public final class Crowds {

    /** Of floods and of periods. */
    public static final Duration TEN_MINUTES = Duration.ofMinutes(10);

    private static final int FLOOD_ABOVE = 10;
    private static final int FLOOD_BELOW = 5;
    private static final Duration CHATTER = Duration.ofSeconds(60);
    private static final int CHATTER_RAISES = 3;

    private Crowds() {}

    /**
     * Floods: begin with the alarm that makes more than 10 within ten minutes, end when fewer than 5 are left.
     *
     * @param moments in order
     * @param technicians the bounds hold for each
     * @param end of the stretch; a flood that goes on ends there
     */
    public static List<Flood> floods(List<Instant> moments, int technicians, Instant end) {
        List<Flood> floods = new ArrayList<>();
        Deque<Instant> window = new ArrayDeque<>();
        Instant begun = null;
        int count = 0;
        for (Instant moment : moments) {
            while (!window.isEmpty() && window.peek().plus(TEN_MINUTES).isBefore(moment)) {
                Instant left = window.remove().plus(TEN_MINUTES);
                if (begun != null && window.size() < FLOOD_BELOW * technicians) {
                    floods.add(new Flood(begun, left, count));
                    begun = null;
                }
            }
            window.add(moment);
            count++;
            if (begun == null && window.size() > FLOOD_ABOVE * technicians) {
                begun = moment;
                count = window.size();
            }
        }
        if (begun != null) {
            floods.add(new Flood(begun, endOf(window, technicians, end), count));
        }
        return floods;
    }

    /** When the last flood is over, if nothing comes any more. */
    private static Instant endOf(Deque<Instant> window, int technicians, Instant end) {
        Instant over = end;
        while (window.size() >= FLOOD_BELOW * technicians) {
            over = window.remove().plus(TEN_MINUTES);
        }
        return over.isAfter(end) ? end : over;
    }

    /** The most moments within any ten minutes. */
    public static int most(List<Instant> moments) {
        Deque<Instant> window = new ArrayDeque<>();
        int most = 0;
        for (Instant moment : moments) {
            while (!window.isEmpty() && window.peek().plus(TEN_MINUTES).isBefore(moment)) {
                window.remove();
            }
            window.add(moment);
            most = Math.max(most, window.size());
        }
        return most;
    }

    /**
     * Whether one alarm was raised three times or more within 60 s.
     *
     * @param raises of that alarm, in order
     */
    public static boolean chatters(List<Instant> raises) {
        for (int i = CHATTER_RAISES - 1; i < raises.size(); i++) {
            Instant first = raises.get(i - CHATTER_RAISES + 1);
            if (!first.plus(CHATTER).isBefore(raises.get(i))) {
                return true;
            }
        }
        return false;
    }

    /**
     * How many of the periods into which the stretch is cut hold more than so many.
     *
     * @param moments in order, within the stretch
     */
    public static long crowded(List<Instant> moments, Instant from, Duration period, int moreThan) {
        return moments.stream()
                .collect(java.util.stream.Collectors.groupingBy(
                        moment -> Duration.between(from, moment).dividedBy(period),
                        java.util.stream.Collectors.counting()))
                .values()
                .stream()
                .filter(count -> count > moreThan)
                .count();
    }
}
