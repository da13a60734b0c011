package org.roundsman.discovery.run;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** The rule is the project's own: in the long run no more requests a second than set, whatever visits turn out to cost. */
class PacePropertyTest {

    private long now;

    @Property(tries = 100)
    void noMoreThanSetLeaveInTheLongRun(
            @ForAll @IntRange(min = 1, max = 500) int perSecond, @ForAll @IntRange(min = 1, max = 30) int cost) {
        now = 0;
        Pace pace = new Pace(perSecond, () -> now);
        long sent = 0;
        int last = 0;
        while (now < 60_000_000_000L) {
            long wait = pace.take(cost);
            if (wait == 0) {
                last = cost + (int) (sent % 3);
                pace.settle(cost, last);
                sent += last;
            } else {
                now += wait;
            }
        }
        double allowed = 60.0 * perSecond;
        assertThat((double) sent).isBetween(allowed * 0.95 - 40, allowed + Math.max(1, perSecond / 20.0) + last + 2);
    }
}
