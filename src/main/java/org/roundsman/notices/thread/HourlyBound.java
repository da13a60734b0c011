package org.roundsman.notices.thread;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** At most so many messages to one person by one channel in any hour, the last of them a summary. Pure. */
public final class HourlyBound {

    public static final Duration HOUR = Duration.ofHours(1);

    private final int most;
    private final Duration collect;

    public HourlyBound(int most, Duration collect) {
        this.most = most;
        this.collect = collect;
    }

    /**
     * A message that is due.
     *
     * @param since when it came
     * @param bounded whether the bound holds for it; others always go
     * @param foldable false where it may have arrived already, so that it is repeated as it was or not at all
     */
    public record Due(long id, Instant since, boolean bounded, boolean foldable) {}

    /**
     * What to do with those that are due.
     *
     * @param send one by one
     * @param sum together in one summary; empty or at least two
     */
    public record Share(List<Long> send, List<Long> sum) {}

    /**
     * Shares them out.
     *
     * @param due of one person and channel, in the order in which they came
     * @param used bounded messages and summaries that went out within the last hour, and those on their way
     */
    public Share share(List<Due> due, int used, Instant now) {
        List<Long> send = new ArrayList<>();
        due.stream().filter(one -> !one.bounded()).forEach(one -> send.add(one.id()));
        int room = Math.max(0, most - used);
        List<Due> repeats = due.stream()
                .filter(one -> one.bounded() && !one.foldable())
                .limit(room)
                .toList();
        repeats.forEach(one -> send.add(one.id()));
        List<Due> fresh =
                due.stream().filter(one -> one.bounded() && one.foldable()).toList();
        return fresh(fresh, room - repeats.size(), send, now);
    }

    private Share fresh(List<Due> fresh, int room, List<Long> send, Instant now) {
        // The last place of the hour is kept for a summary of what does not fit.
        int single = fresh.size() < room ? fresh.size() : Math.max(0, room - 1);
        fresh.stream().limit(single).forEach(one -> send.add(one.id()));
        List<Due> rest = fresh.subList(Math.min(single, fresh.size()), fresh.size());
        if (rest.isEmpty() || room < 1 || now.isBefore(rest.get(0).since().plus(collect))) {
            return new Share(send, List.of());
        }
        if (rest.size() == 1) {
            send.add(rest.get(0).id());
            return new Share(send, List.of());
        }
        return new Share(send, rest.stream().map(Due::id).toList());
    }
}
