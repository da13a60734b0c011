package org.roundsman.topology.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.TreeNode;

/** Whatever the evidence says: no circle, at most one device above each, and nothing is lost. */
class TreePropertyTest {

    @Property(tries = 400)
    void placesNeverRunInACircle(@ForAll long seed, @ForAll @IntRange(min = 1, max = 14) int devices) {
        Map<Long, Attachment> places = site(new Random(seed), devices).places();
        assertThat(places).hasSize(devices);
        for (long id = 1; id <= devices; id++) {
            Set<Long> seen = new HashSet<>();
            long at = id;
            while (places.get(at).known()) {
                assertThat(seen.add(at)).as("circle at " + at + " of " + places).isTrue();
                at = places.get(at).parentId().getAsLong();
            }
        }
    }

    @Property(tries = 200)
    void theSameEvidenceGivesTheSamePlaces(@ForAll long seed) {
        assertThat(site(new Random(seed), 12).places())
                .isEqualTo(site(new Random(seed), 12).places());
    }

    @Property(tries = 400)
    void aTreeHoldsEachDeviceOnceWhateverItIsMadeOf(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 14) int devices) {
        Random random = new Random(seed);
        List<SiteTree.Item> items = anything(random, devices);
        SiteTree tree = SiteTree.of(items, (device, port) -> Optional.empty());
        List<Long> all = tree.all().map(TreeNode::deviceId).toList();
        assertThat(all).doesNotHaveDuplicates().hasSize(devices);
        for (long id : all) {
            List<TreeNode> path = tree.pathUp(id);
            assertThat(path.get(0).deviceId()).isEqualTo(id);
            assertThat(path.get(path.size() - 1).place().known()).isFalse();
            for (int i = 1; i < path.size(); i++) {
                assertThat(path.get(i - 1).place().parentId())
                        .hasValue(path.get(i).deviceId());
                assertThat(tree.below(path.get(i).deviceId()).stream().map(TreeNode::deviceId))
                        .contains(id);
            }
        }
        Set<Long> apart = tree.tops().stream()
                .flatMap(TreeNode::all)
                .map(TreeNode::deviceId)
                .collect(Collectors.toSet());
        tree.unknown().forEach(node -> assertThat(apart.add(node.deviceId())).isTrue());
        assertThat(apart).hasSize(devices);
    }

    /** Each device on any other, on itself excepted, or at a place that nobody knows. */
    private static List<SiteTree.Item> anything(Random random, int devices) {
        List<SiteTree.Item> items = new ArrayList<>();
        for (long id = 1; id <= devices; id++) {
            long parent = random.nextInt(devices + 2);
            Attachment place = parent == 0 || parent == id
                    ? Attachment.unknown(id, "", List.of())
                    : new Attachment(
                            id,
                            OptionalLong.of(parent),
                            OptionalInt.of(random.nextInt(5)),
                            "",
                            How.LLDP,
                            "",
                            List.of(),
                            false,
                            Optional.empty());
            DeviceKind kind = DeviceKind.values()[random.nextInt(3)];
            items.add(new SiteTree.Item(id, "device " + id, kind, place));
        }
        return items;
    }

    private static Site site(Random random, int devices) {
        Site site = new Site();
        for (long id = 1; id <= devices; id++) {
            switch (random.nextInt(5)) {
                case 0 -> site.gateway(id);
                case 1, 2 -> site.bridge(id);
                default -> site.point(id);
            }
        }
        for (int i = 0; i < 3 * devices; i++) {
            long one = 1 + random.nextInt(devices);
            long other = 1 + random.nextInt(devices);
            int port = 1 + random.nextInt(24);
            switch (random.nextInt(6)) {
                case 0, 1 -> site.hears(one, port, other, Site.FIRST.plusSeconds(random.nextInt(9)), random.nextInt(5));
                case 2 -> site.cable(one, port, other, 1 + random.nextInt(24));
                case 3, 4 -> site.learnt(one, port, other, random.nextInt(3));
                default -> {
                    if (random.nextInt(4) == 0 && one != other) {
                        site.said(one, other, port);
                    }
                }
            }
        }
        return site;
    }
}
