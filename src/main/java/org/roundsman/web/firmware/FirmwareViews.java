package org.roundsman.web.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.firmware.FirmwareChanges;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.FirmwareWork;
import org.roundsman.firmware.WorkItem;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Visitor;

/** Puts together what the pages of firmware show. */
@ApplicationScoped
class FirmwareViews {

    private static final int A_PAGE = 25;

    private final FirmwareStates states;
    private final FirmwareWork work;
    private final FirmwareChanges changes;
    private final Visitor visitor;
    private final Clock clock;

    FirmwareViews(FirmwareStates states, FirmwareWork work, FirmwareChanges changes, Visitor visitor, Clock clock) {
        this.states = states;
        this.work = work;
        this.changes = changes;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** Something to choose. */
    record Choice(String value, String name, boolean chosen) {}

    /** What can be chosen in the filter. */
    record Choices(List<Choice> statuses, List<Choice> customers, List<Choice> models) {}

    /** How many have a status. */
    record Total(String word, String count, String link) {}

    /** Addresses of the pages before and after; empty where there is none. */
    record Turn(int number, int last, String previous, String next) {

        static Turn of(Page<?> page, Function<Integer, String> address) {
            return new Turn(
                    page.number(),
                    page.last(),
                    page.hasPrevious() ? address.apply(page.number() - 1) : "",
                    page.hasNext() ? address.apply(page.number() + 1) : "");
        }
    }

    /** How many run what. */
    record Runs(
            FirmwareSearch search,
            Choices choices,
            List<Total> totals,
            List<RunLine> lines,
            long mixedSites,
            String mixedLink,
            Turn turn,
            String download) {}

    /** Device by device. */
    record Listed(
            FirmwareSearch search,
            Choices choices,
            List<DeviceLine> lines,
            long total,
            String site,
            Turn turn,
            String download) {}

    /** What has to be done. */
    record Work(List<WorkLine> lines, long total, int minutes, Turn turn) {}

    /** What changed. */
    record Upgrades(List<UpgradeLine> lines, String device, Turn turn) {}

    List<FirmwareState> found(FirmwareSearch search) {
        return states.all(visitor.scope()).stream().filter(search::takes).toList();
    }

    Runs runs(FirmwareSearch search) {
        List<FirmwareState> all = states.all(visitor.scope());
        List<FirmwareState> found = all.stream().filter(search::takes).toList();
        Page<RunLine> page = cut(RunLine.of(found, search), search.number());
        long mixed = found.stream()
                .filter(FirmwareState::mixed)
                .map(state -> state.place().siteId())
                .distinct()
                .count();
        return new Runs(
                search,
                choices(all, search),
                totals(found, search),
                page.items(),
                mixed,
                "/firmware/devices" + search.query(Map.of("mixed", "yes")),
                Turn.of(page, number -> "/firmware" + search.address(number)),
                "/firmware/devices.csv" + search.address(1));
    }

    Listed devices(FirmwareSearch search) {
        List<FirmwareState> all = states.all(visitor.scope());
        List<FirmwareState> found = all.stream().filter(search::takes).toList();
        Page<FirmwareState> page = cut(found, search.number());
        String site = search.site().isEmpty() || found.isEmpty()
                ? ""
                : found.get(0).place().site();
        return new Listed(
                search,
                choices(all, search),
                page.items().stream().map(DeviceLine::of).toList(),
                found.size(),
                site,
                Turn.of(page, number -> "/firmware/devices" + search.address(number)),
                "/firmware/devices.csv" + search.address(1));
    }

    private static List<Total> totals(List<FirmwareState> found, FirmwareSearch search) {
        return Arrays.stream(FirmwareStatus.values())
                .map(status -> new Total(
                        status.word(),
                        org.roundsman.web.page.Words.count(found.stream()
                                .filter(state -> state.status() == status)
                                .count()),
                        "/firmware/devices" + search.query(Map.of("status", FirmwareSearch.word(status)))))
                .toList();
    }

    private static Choices choices(List<FirmwareState> all, FirmwareSearch search) {
        Map<String, String> customers = new LinkedHashMap<>();
        Map<String, String> models = new TreeMap<>();
        for (FirmwareState state : all) {
            customers.putIfAbsent(
                    String.valueOf(state.place().customerId()), state.place().customer());
            models.putIfAbsent(
                    FirmwareWords.or(state.place().model(), "not known"),
                    String.valueOf(state.place().modelId().orElse(0)));
        }
        return new Choices(
                Arrays.stream(FirmwareStatus.values())
                        .map(status -> choice(FirmwareSearch.word(status), status.word(), search.status()))
                        .toList(),
                customers.entrySet().stream()
                        .map(one -> choice(one.getKey(), one.getValue(), search.customer()))
                        .toList(),
                models.entrySet().stream()
                        .map(one -> choice(one.getValue(), one.getKey(), search.model()))
                        .toList());
    }

    private static Choice choice(String value, String name, String chosen) {
        return new Choice(value, name, value.equals(chosen));
    }

    List<WorkItem> items() {
        return work.list(visitor.scope());
    }

    Work work(String number) {
        Page<WorkItem> page = cut(items(), number(number));
        return new Work(
                page.items().stream().map(WorkLine::of).toList(),
                page.total(),
                work.minutesEach(),
                Turn.of(page, other -> "/firmware/work?page=" + other));
    }

    Upgrades upgrades(String device, String number) {
        OptionalLong only = device != null && device.matches("[0-9]{1,18}")
                ? OptionalLong.of(Long.parseLong(device))
                : OptionalLong.empty();
        Page<FirmwareChange> page = changes.page(visitor.scope(), only, number(number), A_PAGE);
        List<UpgradeLine> lines = page.items().stream()
                .map(change -> UpgradeLine.of(change, clock.instant()))
                .toList();
        String part = only.isPresent() ? "device=" + only.getAsLong() + "&" : "";
        return new Upgrades(
                lines,
                only.isPresent() && !lines.isEmpty() ? lines.get(0).device() : "",
                Turn.of(page, other -> "/firmware/upgrades?" + part + "page=" + other));
    }

    private static int number(String text) {
        return text != null && text.matches("[0-9]{1,6}") ? Math.max(1, Integer.parseInt(text)) : 1;
    }

    private static <T> Page<T> cut(List<T> all, int number) {
        int last = Math.max(1, (all.size() + A_PAGE - 1) / A_PAGE);
        int shown = Math.min(number, last);
        int from = (shown - 1) * A_PAGE;
        return new Page<>(all.subList(from, Math.min(all.size(), from + A_PAGE)), shown, A_PAGE, all.size());
    }
}
