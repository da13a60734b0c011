package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class AdmissionTest {

    private final List<String> begun = new ArrayList<>();

    @Test
    void aSiteAtItsBoundWaitsInOrderAndHoldsUpNobodyElse() {
        Admission admission = new Admission(2, 10);
        for (int i = 1; i <= 4; i++) {
            String name = "a" + i;
            admission.enter(1, () -> begun.add(name));
        }
        admission.enter(2, () -> begun.add("b1"));
        assertThat(begun).containsExactly("a1", "a2", "b1");
        admission.leave(1);
        admission.leave(1);
        assertThat(begun).containsExactly("a1", "a2", "b1", "a3", "a4");
    }

    @Test
    void theBoundInAllHoldsAndSitesTakeTurns() {
        Admission admission = new Admission(2, 2);
        admission.enter(1, () -> begun.add("a1"));
        admission.enter(1, () -> begun.add("a2"));
        admission.enter(1, () -> begun.add("a3"));
        admission.enter(2, () -> begun.add("b1"));
        admission.enter(3, () -> begun.add("c1"));
        assertThat(begun).containsExactly("a1", "a2");
        assertThat(admission.waiting()).isEqualTo(3);
        admission.leave(1);
        admission.leave(1);
        assertThat(begun).containsExactly("a1", "a2", "b1", "c1");
        admission.leave(2);
        assertThat(begun).endsWith("a3");
    }

    @Property(tries = 200)
    void boundsHoldAndEveryRoundBeginsOnce(
            @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 4) int perSite,
            @ForAll @IntRange(min = 1, max = 9) int inAll) {
        Admission admission = new Admission(perSite, inAll);
        Random random = new Random(seed);
        List<Long> running = new ArrayList<>();
        Map<Long, Integer> begunAt = new HashMap<>();
        for (int i = 0; i < 120; i++) {
            long site = random.nextInt(5);
            admission.enter(site, () -> {
                running.add(site);
                begunAt.merge(site, 1, Integer::sum);
            });
            check(running, perSite, inAll);
            if (random.nextBoolean() && !running.isEmpty()) {
                admission.leave(running.remove(random.nextInt(running.size())));
                check(running, perSite, inAll);
            }
        }
        while (!running.isEmpty()) {
            admission.leave(running.remove(0));
            check(running, perSite, inAll);
        }
        assertThat(begunAt.values().stream().mapToInt(n -> n).sum()).isEqualTo(120);
        assertThat(admission.waiting()).isZero();
        assertThat(admission.running()).isZero();
    }

    private static void check(List<Long> running, int perSite, int inAll) {
        assertThat(running.size()).isLessThanOrEqualTo(inAll);
        for (long site = 0; site < 5; site++) {
            long here = site;
            assertThat(running.stream().filter(s -> s == here).count()).isLessThanOrEqualTo(perSite);
        }
    }
}
