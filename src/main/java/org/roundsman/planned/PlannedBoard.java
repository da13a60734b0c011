package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.planned.PlannedWindow.State;
import org.roundsman.planned.store.WindowTable;
import org.roundsman.shared.Page;

/** Lists planned work for people. */
@ApplicationScoped
public class PlannedBoard {

    private final WindowTable table;
    private final Clock clock;

    @Inject
    PlannedBoard(DataSource database, Clock clock) {
        this.table = new WindowTable(database);
        this.clock = clock;
    }

    /**
     * What is not over.
     *
     * @param running the one that ends first comes first
     * @param coming happens once; the next comes first
     * @param repeating not at this moment; the next comes first
     */
    public record Open(List<PlannedWindow> running, List<PlannedWindow> coming, List<PlannedWindow> repeating) {}

    /**
     * What is going on and what is to come.
     *
     * @param siteId only what reaches that site or a device there; null for all
     */
    public Open open(CustomerScope scope, Long siteId) {
        Instant now = clock.instant();
        List<PlannedWindow> all = table.open(scope.onlyCustomer(), siteId, now);
        return new Open(
                in(all, State.RUNNING, now, one -> one.running(now)),
                in(all, State.COMING, now, one -> one.next(now)),
                in(all, State.REPEATING, now, one -> one.next(now)));
    }

    private static List<PlannedWindow> in(
            List<PlannedWindow> all,
            State state,
            Instant now,
            java.util.function.Function<PlannedWindow, Optional<Stretch>> when) {
        Comparator<PlannedWindow> order = state == State.RUNNING
                ? Comparator.comparing(one -> when.apply(one).orElseThrow().to())
                : Comparator.comparing(one -> when.apply(one).orElseThrow().from());
        return all.stream()
                .filter(one -> one.state(now) == state)
                .sorted(order.thenComparing(PlannedWindow::id))
                .toList();
    }

    /** The same in one list, by id. */
    public List<PlannedWindow> unfinished(CustomerScope scope, Long siteId) {
        Instant now = clock.instant();
        return table.open(scope.onlyCustomer(), siteId, now).stream()
                .filter(one -> switch (one.state(now)) {
                    case RUNNING, COMING, REPEATING -> true;
                    case OVER, CANCELLED, REPLACED -> false;
                })
                .toList();
    }

    /** What is over, the latest first. */
    public Page<PlannedWindow> past(CustomerScope scope, Long siteId, int number, int size) {
        Instant now = clock.instant();
        long total = table.countPast(scope.onlyCustomer(), siteId, now);
        int last = (int) Math.max(1, (total + size - 1) / size);
        int shown = Math.max(1, Math.min(number, last));
        return new Page<>(
                table.past(scope.onlyCustomer(), siteId, now, size, (long) (shown - 1) * size), shown, size, total);
    }

    /**
     * All of it by ascending id, for who reads it piece by piece.
     *
     * @param siteId only what reaches that site or a device there; null for all
     * @param after only windows with a greater id
     */
    public List<PlannedWindow> after(CustomerScope scope, Long siteId, long after, int most) {
        return table.after(scope.onlyCustomer(), siteId, after, most);
    }
}
