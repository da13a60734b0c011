package org.roundsman.notices;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.roundsman.notices.send.Backoff;
import org.roundsman.notices.send.SendFailure;
import org.roundsman.notices.store.DueTable;
import org.roundsman.notices.store.OutboxTable;
import org.roundsman.notices.store.OutboxTable.Claimed;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.text.Content;
import org.roundsman.notices.text.NoticeKind;
import org.roundsman.notices.thread.HourlyBound;

/**
 * Takes what is due out of the outbox and sends it, at least once: a message is marked as sent after it arrived, so that a
 * crash in between repeats it, under the same key.
 */
final class Sending {

    /** Longer than any attempt takes; after a crash an attempt counts as under way for so long. */
    static final Duration LEASE = Duration.ofMinutes(5);

    private static final Logger LOG = Logger.getLogger(Sending.class);

    private final Surroundings at;
    private final Carrier carrier;
    private final HourlyBound bound;
    private final Backoff backoff;

    /** Brings a message to where it belongs. */
    @FunctionalInterface
    interface Carrier {
        void carry(Claimed message) throws SendFailure;
    }

    Sending(Surroundings at, Carrier carrier, RandomGenerator random) {
        this.at = at;
        this.carrier = carrier;
        this.bound = new HourlyBound(at.config().mostPerHour(), at.config().collect());
        this.backoff = new Backoff(at.config().firstRetry(), at.config().longestRetry(), random);
    }

    /** Sums up what is over the bound, and takes at most so many messages for an attempt. */
    List<Claimed> claim(int most) {
        Instant now = at.now();
        return at.whole(connection -> {
            Map<Way, List<HourlyBound.Due>> due = DueTable.due(connection, now).stream()
                    .collect(Collectors.groupingBy(
                            row -> new Way(row.accountId(), row.channel()),
                            LinkedHashMap::new,
                            Collectors.mapping(DueTable.Row::due, Collectors.toList())));
            List<Long> send = new ArrayList<>();
            for (Map.Entry<Way, List<HourlyBound.Due>> one : due.entrySet()) {
                Way way = one.getKey();
                int used = DueTable.used(connection, way.account(), way.channel(), now);
                HourlyBound.Share share = bound.share(one.getValue(), used, now);
                send.addAll(share.send());
                if (!share.sum().isEmpty()) {
                    send.add(sum(connection, way, share.sum(), now));
                }
            }
            List<Long> taken = send.stream().limit(most).toList();
            return OutboxTable.claim(connection, taken, now.plus(LEASE));
        });
    }

    /** A person and a channel. */
    private record Way(long account, String channel) {}

    private long sum(Connection connection, Way way, List<Long> ids, Instant now) throws SQLException {
        List<DueTable.Part> parts = DueTable.parts(connection, ids);
        Instant since = parts.stream()
                .map(DueTable.Part::createdAt)
                .min(Instant::compareTo)
                .orElse(now);
        ZoneId zone = PersonTable.choices(connection, way.account())
                .map(NoticeChoices::zone)
                .orElse(NoticeChoices.untouched().zone());
        Content content =
                at.texts().summary(parts.stream().map(DueTable.Part::content).toList(), since, zone);
        long summary = OutboxTable.add(
                        connection,
                        new OutboxTable.Fresh(
                                Optional.empty(),
                                NoticeKind.SUMMARY,
                                "summary-" + ids.get(0),
                                way.account(),
                                way.channel(),
                                parts.get(0).severity(),
                                content,
                                now,
                                at.giveUp(now)),
                        now)
                .orElseThrow();
        DueTable.summed(connection, ids, summary);
        return summary;
    }

    /** Makes one attempt and writes down how it ended. */
    void attempt(Claimed message) {
        try {
            carrier.carry(message);
        } catch (SendFailure e) {
            failed(message, e);
            return;
        } catch (RuntimeException e) {
            LOG.errorf(e, "Message %d of the outbox could not be sent", message.id());
            failed(
                    message,
                    SendFailure.uncertain("a fault of our own: " + e.getClass().getSimpleName(), e));
            return;
        }
        at.whole(connection -> {
            OutboxTable.sent(connection, message.id(), at.now());
            return null;
        });
    }

    private void failed(Claimed message, SendFailure failure) {
        Instant next = at.now().plus(backoff.after(message.attempts()));
        Optional<Instant> again =
                failure.permanent() || next.isAfter(message.giveUpAt()) ? Optional.empty() : Optional.of(next);
        if (again.isEmpty()) {
            LOG.warnf(
                    "Message %d of the outbox is given up after %d attempts: %s",
                    message.id(), message.attempts(), failure.getMessage());
        }
        at.whole(connection -> {
            OutboxTable.failed(connection, message.id(), failure.getMessage(), again, failure.uncertain());
            return null;
        });
    }
}
