package org.roundsman.triage;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;

/** Whatever hangs on what and whoever is silent: each silent device has one explanation, and it ends in a lost cause. */
class CauseFinderPropertyTest {

    /** An access point was lost with the switch above it; one below it had been silent for too long to be lost with that. */
    @Example
    void whatIsExplainedItselfExplainsNothingThatItsOwnCauseDoesNot() {
        everySilentDeviceIsExplainedByOneChainThatEndsInALostCause(59_330, 13);
    }

    @Property(tries = 60_000)
    void everySilentDeviceIsExplainedByOneChainThatEndsInALostCause(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 16) int devices) {
        SiteSituation situation = anything(new Random(seed), devices).situation();
        List<Finding> findings = CauseFinder.find(situation);
        Map<AlarmKey, Finding> byKey = new HashMap<>();
        findings.forEach(finding -> assertThat(byKey.put(finding.key(), finding))
                .as("two findings of " + finding.key())
                .isNull());
        situation.devices().values().stream().filter(DeviceLook::silent).forEach(look -> assertThat(
                        end(byKey, Place.silence(look.deviceId())))
                .as("the cause of " + look)
                .satisfies(cause -> isLost(situation, cause)));
        findings.forEach(finding -> finding.affected()
                .forEach(id -> assertThat(situation.devices().get(id).lost())
                        .as(id + " suffers from " + finding)
                        .isTrue()));
    }

    @Property(tries = 300)
    void theSameSituationGivesTheSameFindings(@ForAll long seed) {
        assertThat(anything(new Random(seed), 12).findings())
                .isEqualTo(anything(new Random(seed), 12).findings());
    }

    @Property(tries = 300)
    void withEverythingLostAtOnceThereIsOneCause(
            @ForAll long seed, @ForAll @IntRange(min = 2, max = 16) int devices, @ForAll boolean early) {
        Random random = new Random(seed);
        Place place = tree(random, devices);
        Instant fault = Place.at("10:41:00");
        for (long id = 1; id <= devices; id++) {
            Instant first = fault.plusMillis(1 + random.nextInt(59_999));
            if (early && id > 1) {
                place.missing(id, 2, first.atZone(Place.ZONE).toLocalTime().toString());
            } else {
                place.silent(id, first, first.minusSeconds(60));
            }
        }
        assertThat(place.cause().key()).isEqualTo(Place.uplink());
    }

    private static Finding end(Map<AlarmKey, Finding> byKey, AlarmKey from) {
        Set<AlarmKey> seen = new HashSet<>();
        AlarmKey at = from;
        while (true) {
            Finding finding = byKey.get(at);
            assertThat(finding).as("a finding of " + at).isNotNull();
            assertThat(seen.add(at)).as("a circle at " + at).isTrue();
            if (finding.causedBy().isEmpty()) {
                return finding;
            }
            at = finding.causedBy().get();
        }
    }

    private static void isLost(SiteSituation situation, Finding cause) {
        if (cause.key().type() == AlarmType.UPLINK_LOST) {
            assertThat(situation.devices().values()).anyMatch(DeviceLook::silent);
        } else {
            assertThat(situation.devices().get(cause.key().resource().id()).lost())
                    .isTrue();
        }
        assertThat(cause.evidence()).isNotEmpty().allMatch(sentence -> sentence.endsWith("."));
    }

    private static Place anything(Random random, int devices) {
        Place place = tree(random, devices);
        for (long id = 1; id <= devices; id++) {
            Instant since = Place.at("10:41:00").minusSeconds(random.nextInt(4) * random.nextInt(2_000));
            String local = since.atZone(Place.ZONE).toLocalTime().toString();
            switch (random.nextInt(8)) {
                case 0, 1, 2 -> place.silent(id, since, since.minusSeconds(60));
                case 3 -> place.missing(id, 1 + random.nextInt(2), local);
                case 4 -> place.unwatched(id);
                case 5 -> place.refuses(id);
                default -> place.heard(id, "10:43:30");
            }
        }
        return place;
    }

    private static Place tree(Random random, int devices) {
        Place place = new Place();
        for (long id = 1; id <= devices; id++) {
            switch (random.nextInt(5)) {
                case 0 -> place.gateway(id);
                case 1, 2 -> place.bridge(id);
                default -> place.point(id);
            }
            long on = 1 + random.nextInt(devices);
            if (on != id && random.nextInt(5) > 0) {
                if (random.nextInt(6) == 0) {
                    place.hungOnce(id, on, random.nextInt(9));
                } else {
                    place.hangs(id, on, random.nextInt(9));
                }
            }
        }
        return place;
    }
}
