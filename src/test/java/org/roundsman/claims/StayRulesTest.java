package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.roundsman.claims.Stay.Standing;
import org.roundsman.claims.StayRules.Said;
import org.roundsman.claims.StayRules.Step;

/** What a device says about its serial number, and what follows. */
class StayRulesTest {

    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private static Instant hour(int hours) {
        return START.plusSeconds(3600L * hours);
    }

    private static Stay stay(String serial, int from, Standing standing, String instead) {
        boolean told = standing == Standing.ANNOUNCED || standing == Standing.CONFIRMED;
        return new Stay(
                1,
                1,
                serial,
                "",
                1,
                OptionalLong.empty(),
                "Pier",
                ZoneOffset.UTC,
                OptionalLong.of(5),
                "ap-1",
                hour(from),
                Optional.empty(),
                standing,
                "",
                told ? Optional.of(hour(from)) : Optional.empty(),
                instead,
                instead.isEmpty() ? Optional.empty() : Optional.of(hour(from)));
    }

    private static Step of(Stay stay, Said said) {
        return StayRules.of(Optional.of(stay), Optional.empty(), said);
    }

    @Test
    void theFirstSerialNumberBeginsAStayWhenItWasFirstRead() {
        assertThat(StayRules.of(Optional.empty(), Optional.empty(), Said.today("A", hour(1), hour(4))))
                .isEqualTo(new Step.Begin("A", hour(1)));
        assertThat(StayRules.of(Optional.empty(), Optional.empty(), Said.today("  ", hour(1), hour(4))))
                .isEqualTo(new Step.Nothing());
    }

    @Test
    void anotherSerialNumberEndsOneStayAndBeginsTheNext() {
        Stay stay = stay("A", 1, Standing.READ, "");
        assertThat(of(stay, Said.once("B", hour(2)))).isEqualTo(new Step.Follow("B", hour(2)));
        assertThat(of(stay, Said.once("a", hour(2)))).as("case does not count").isEqualTo(new Step.Nothing());
        assertThat(of(stay, Said.once("B", hour(1)))).as("not later").isEqualTo(new Step.Nothing());
        assertThat(of(stay, Said.once("B", hour(0)))).as("older").isEqualTo(new Step.Nothing());
    }

    @Test
    void anAnnouncedUnitIsConfirmedByWhatTheDeviceSaysToday() {
        Stay stay = stay("B", 5, Standing.ANNOUNCED, "");
        assertThat(of(stay, Said.today("B", hour(6), hour(6)))).isEqualTo(new Step.Confirm());
        assertThat(of(stay, Said.once("B", hour(2)))).as("what was said once").isEqualTo(new Step.Nothing());
    }

    @Test
    void anotherOneThanAnnouncedIsAContradictionAndNeverTakenForTrue() {
        Stay stay = stay("B", 5, Standing.ANNOUNCED, "");
        assertThat(of(stay, Said.today("C", hour(6), hour(7)))).isEqualTo(new Step.Contradict("C", hour(6)));
        assertThat(of(stay, Said.today("A", hour(1), hour(4))))
                .as("not asked since: the old one says nothing")
                .isEqualTo(new Step.Nothing());
        assertThat(of(stay, Said.today("A", hour(1), hour(6))))
                .as("asked since, and still the old one")
                .isEqualTo(new Step.Contradict("A", hour(1)));
        assertThat(of(stay("B", 5, Standing.ANNOUNCED, "C"), Said.today("C", hour(6), hour(8))))
                .as("known already")
                .isEqualTo(new Step.Nothing());
        assertThat(of(stay("B", 5, Standing.ANNOUNCED, "C"), Said.today("B", hour(8), hour(8))))
                .as("it comes right")
                .isEqualTo(new Step.Confirm());
    }

    /** In order and each once, or with what was said before said again at any point: the same stays come out. */
    @Property(tries = 300)
    void whatIsSaidAgainChangesNothing(@ForAll long seed) {
        Random random = new Random(seed);
        List<Said> words = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(8); i++) {
            words.add(Said.once(String.valueOf((char) ('A' + random.nextInt(3))), hour(i)));
        }
        List<String> expected = told(words);
        List<Said> again = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            again.add(words.get(i));
            List<Said> before = new ArrayList<>(words.subList(0, i + 1));
            Collections.shuffle(before, random);
            again.addAll(before.subList(0, random.nextInt(before.size() + 1)));
        }
        assertThat(told(again)).isEqualTo(expected);
    }

    private static List<String> told(List<Said> words) {
        List<String> all = new ArrayList<>();
        Optional<Stay> now = Optional.empty();
        for (Said said : words) {
            Step step = StayRules.of(now, Optional.empty(), said);
            String serial = step instanceof Step.Begin begin
                    ? begin.serial()
                    : step instanceof Step.Follow follow ? follow.serial() : "";
            if (!serial.isEmpty()) {
                int from = (int) ((said.since().toEpochMilli() - START.toEpochMilli()) / 3_600_000);
                now = Optional.of(stay(serial, from, Standing.READ, ""));
                all.add(serial + " since " + from);
            }
        }
        return all;
    }
}
