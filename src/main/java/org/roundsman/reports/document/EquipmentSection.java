package org.roundsman.reports.document;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.stream.Collectors;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.reports.Equipment;
import org.roundsman.warranty.CoverStatus;

/** What there is, what runs on it, and until when it is covered. */
final class EquipmentSection {

    private static final int MOST_VERSIONS = 8;
    private static final int MOST_ENDING = 12;

    private final Ink ink;
    private final Equipment equipment;
    private final Section.Draft draft;

    private EquipmentSection(Ink ink) {
        this.ink = ink;
        this.equipment = ink.report().equipment();
        this.draft = ink.section("equipment");
    }

    static Section of(Ink ink) {
        EquipmentSection section = new EquipmentSection(ink);
        if (section.equipment.devices() == 0) {
            return section.draft.say("equipment.none").done();
        }
        section.write();
        return section.draft.done();
    }

    private void write() {
        draft.say(
                "equipment.intro",
                "count",
                equipment.devices(),
                "moment",
                ink.formats().utc(ink.report().asOf()));
        draft.say("equipment.past", "count", equipment.pastSupport());
        states("firmware", names(FirmwareStatus.values()), equipment.firmware());
        versions();
        states("warranty", names(CoverStatus.values()), equipment.warranty());
        int ended = equipment.warranty().getOrDefault(CoverStatus.ENDED.name(), 0);
        if (ended > 0) {
            draft.say("equipment.ended", "count", ended);
        }
        LocalDate until = ink.report().subject().to().plusMonths(6).minusDays(1);
        draft.say(
                "equipment.ending",
                "count",
                equipment.ending().size(),
                "day",
                ink.formats().day(until));
        if (!equipment.ending().isEmpty()) {
            ending();
        }
    }

    private static List<String> names(Enum<?>[] values) {
        return java.util.Arrays.stream(values).map(Enum::name).toList();
    }

    /** In the order that the statuses have among themselves. */
    private void states(String what, List<String> order, SortedMap<String, Integer> counts) {
        Grid grid = new Grid(ink.say("table." + what), ink.say("col.state"), ink.say("col.devices")).numbers(1);
        order.stream()
                .filter(counts::containsKey)
                .forEach(status ->
                        grid.row(ink.say(what + "." + status), ink.formats().whole(counts.get(status))));
        if (!counts.isEmpty()) {
            draft.title("table." + what).add(grid.part());
        }
    }

    private void versions() {
        if (equipment.versions().isEmpty()) {
            return;
        }
        Grid grid = new Grid(
                        ink.say("table.versions"),
                        ink.say("col.model"),
                        ink.say("col.version"),
                        ink.say("col.devices"),
                        ink.say("col.state"))
                .numbers(2);
        equipment.versions().stream()
                .limit(MOST_VERSIONS)
                .forEach(runs -> grid.row(
                        ink.known(runs.model()),
                        ink.known(runs.version()),
                        ink.formats().whole(runs.devices()),
                        statuses(runs.statuses())));
        draft.title("table.versions").add(grid.part());
        draft.more(equipment.versions().size(), MOST_VERSIONS);
    }

    private String statuses(Map<String, Integer> statuses) {
        return names(FirmwareStatus.values()).stream()
                .filter(statuses::containsKey)
                .map(status -> statuses.size() == 1
                        ? ink.say("firmware." + status)
                        : ink.say(
                                "joined",
                                "one",
                                ink.say("firmware." + status),
                                "two",
                                ink.formats().whole(statuses.get(status))))
                .collect(Collectors.joining(", "));
    }

    private void ending() {
        Grid grid = new Grid(
                        ink.say("table.ending"),
                        ink.say("col.last.day"),
                        ink.say("col.site"),
                        ink.say("col.unit"),
                        ink.say("col.model"),
                        ink.say("col.serial"))
                .site(1, ink.onlySite());
        equipment.ending().stream()
                .limit(MOST_ENDING)
                .forEach(one -> grid.row(
                        ink.formats().shortDay(one.lastDay()),
                        one.site(),
                        one.device(),
                        ink.known(one.model()),
                        ink.known(one.serial())));
        draft.add(grid.part()).more(equipment.ending().size(), MOST_ENDING);
        if (ink.look().costs() && !equipment.endingCost().isEmpty()) {
            draft.say("equipment.cost", "cost", ink.formats().money(equipment.endingCost()));
        }
        if (ink.look().costs() && equipment.unpriced() > 0) {
            draft.say("equipment.unpriced", "count", equipment.unpriced());
        }
    }
}
