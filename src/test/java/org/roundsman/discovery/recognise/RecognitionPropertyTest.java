package org.roundsman.discovery.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.roundsman.discovery.Decision;
import org.roundsman.discovery.Standing;

/** Whatever devices say, no two things found become one device of the fleet, and none is lost. */
class RecognitionPropertyTest {

    private static final List<String> SERIALS = List.of("", "none", "SN-0001", "SN-0002", "SN-0003");
    private static final List<String> MACS = List.of("", "00:00:5e:00:53:01", "00:00:5e:00:53:02", "00:00:5e:00:53:03");
    private static final List<String> ENGINES = List.of("", "80007ed90401", "80007ed90402");

    @Property(tries = 3000)
    void noTwoFindingsAreOneDevice(@ForAll long seed) {
        Random random = new Random(seed);
        List<Answer> answers = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(8); i++) {
            Instant started = random.nextBoolean() ? null : Instant.ofEpochSecond(random.nextInt(6));
            answers.add(
                    new Answer(i, "192.0.2." + i, 161, random.nextBoolean() ? "" : "ap", started, identity(random)));
        }
        List<Known> devices = new ArrayList<>();
        for (int i = 0; i < random.nextInt(8); i++) {
            long site = 1 + random.nextInt(3);
            String host = "192.0.2." + random.nextInt(10);
            devices.add(new Known(i, site == 3 ? 11 : 10, site, "Site", "D" + i, host, 161, identity(random)));
        }
        List<Group> groups = Grouping.of(answers);
        assertThat(groups.stream().flatMap(g -> g.answers().stream()).map(Answer::findingId))
                .containsExactlyInAnyOrderElementsOf(
                        answers.stream().map(Answer::findingId).toList());
        List<Decision> decisions = Recognition.decide(groups, devices, 1, 10);
        assertThat(decisions).hasSameSizeAs(groups);
        assertThat(decisions.stream()
                        .filter(d -> Set.of(Standing.KNOWN, Standing.NEW_ADDRESS, Standing.MOVED)
                                .contains(d.standing()))
                        .map(Decision::deviceId))
                .doesNotContainNull()
                .doesNotHaveDuplicates();
        assertThat(decisions).filteredOn(d -> d.deviceId() != null).allSatisfy(d -> assertThat(
                        devices.get(d.deviceId().intValue()).customerId())
                .isEqualTo(10));
    }

    private static Identity identity(Random random) {
        return Identity.of(
                pick(SERIALS, random),
                random.nextInt(4) == 0 ? "Tamarack Radio" : "",
                pick(MACS, random),
                List.of(pick(MACS, random)),
                pick(ENGINES, random));
    }

    private static String pick(List<String> values, Random random) {
        return values.get(random.nextInt(values.size()));
    }
}
