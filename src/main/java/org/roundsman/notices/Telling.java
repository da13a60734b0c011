package org.roundsman.notices;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.store.ChainTable;
import org.roundsman.notices.store.OutboxTable;
import org.roundsman.notices.store.OutboxTable.Told;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.ThreadTable;
import org.roundsman.notices.text.Content;
import org.roundsman.notices.text.NoticeKind;
import org.roundsman.notices.thread.EscalationRule;
import org.roundsman.notices.thread.NoticeThread;
import org.roundsman.notices.thread.Recipient;
import org.roundsman.notices.thread.ThreadFold;
import org.roundsman.notices.thread.ThreadRule;
import org.roundsman.notices.thread.ThreadRule.Step;

/**
 * Reads what changed of alarms, and writes into the outbox what is to be told of it. Each step is one transaction; cut short
 * anywhere, the next run goes on where the last commit left it.
 */
final class Telling {

    private static final int BATCH = 500;

    private final Surroundings at;
    private final ThreadRule rule;

    Telling(Surroundings at) {
        this.at = at;
        this.rule = new ThreadRule(at.config().calmTime(), at.config().settleWait());
    }

    void run() {
        int taken = BATCH;
        while (taken == BATCH) {
            taken = takeChanges();
        }
        tell();
    }

    /** Takes some changes into threads; how many. */
    int takeChanges() {
        return at.whole(connection -> {
            long cursor = ThreadTable.lockCursor(connection);
            List<StatusChange> changes = at.alarms().changesAfter(cursor, BATCH);
            if (changes.isEmpty()) {
                return 0;
            }
            List<NoticeThread> before = ThreadTable.open(connection);
            ThreadFold fold = new ThreadFold(at.config().calmTime(), before);
            changes.forEach(fold::take);
            ThreadTable.save(connection, before, fold.threads());
            ThreadTable.moveCursor(connection, changes.get(changes.size() - 1).id());
            return changes.size();
        });
    }

    /** Decides of every open thread. */
    void tell() {
        at.whole(connection -> {
            ThreadTable.lockCursor(connection);
            List<NoticeThread> open = ThreadTable.open(connection);
            if (open.isEmpty()) {
                return null;
            }
            Map<Long, OpenAlarm> active = new HashMap<>();
            at.alarms().active().forEach(alarm -> active.put(alarm.id(), alarm));
            Turn turn = new Turn(connection, open, at.now());
            for (NoticeThread thread : open) {
                turn.decide(thread, Optional.ofNullable(active.get(thread.alarmId())));
            }
            return null;
        });
    }

    /** One pass over the open threads. */
    private final class Turn {
        private final Connection connection;
        private final Instant now;
        private final List<Recipient> recipients;
        private final List<EscalationChain> chains;
        private final Set<Told> told;

        Turn(Connection connection, List<NoticeThread> open, Instant now) throws SQLException {
            this.connection = connection;
            this.now = now;
            this.recipients = PersonTable.recipients(connection, at.mailOpen().getAsBoolean());
            this.chains = ChainTable.all(connection);
            this.told = OutboxTable.told(
                    connection, open.stream().map(NoticeThread::id).toList());
        }

        void decide(NoticeThread thread, Optional<OpenAlarm> alarm) throws SQLException {
            Step step = rule.decide(thread, alarm, now);
            if (step instanceof Step.End end) {
                end(thread, end);
            } else if (step instanceof Step.Worse worse) {
                worse(thread, alarm.orElseThrow(), worse.severity());
                standing(thread, worse.after(), alarm.get());
            } else if (step instanceof Step.Tell tell) {
                standing(thread, tell.after(), alarm.orElseThrow());
            }
        }

        private void standing(NoticeThread before, NoticeThread after, OpenAlarm alarm) throws SQLException {
            raise(after, alarm);
            NoticeThread last = escalate(after, alarm);
            if (!last.equals(before)) {
                ThreadTable.update(connection, last);
            }
        }

        private void raise(NoticeThread thread, OpenAlarm alarm) throws SQLException {
            for (Recipient person : recipients) {
                boolean wants = person.wants(alarm.customerId(), alarm.severity(), now)
                        && !thread.toldAt().orElse(now).isBefore(person.changedAt());
                for (String channel : wants ? person.channels() : List.<String>of()) {
                    if (!told.contains(new Told(thread.id(), person.accountId(), channel))) {
                        add(
                                thread,
                                NoticeKind.RAISE,
                                "raise",
                                new To(person, channel, now),
                                alarm.severity(),
                                at.texts().raise(alarm));
                    }
                }
            }
        }

        private void worse(NoticeThread thread, OpenAlarm alarm, Severity severity) throws SQLException {
            for (Recipient person : recipients) {
                for (String channel : person.channels()) {
                    boolean knows = told.contains(new Told(thread.id(), person.accountId(), channel));
                    if (knows && person.wants(NoticeEvent.RAISE)) {
                        To to = new To(person, channel, person.hours().next(now));
                        add(
                                thread,
                                NoticeKind.UPDATE,
                                "update-" + severity.code(),
                                to,
                                severity,
                                at.texts().worse(alarm));
                    }
                }
            }
        }

        private NoticeThread escalate(NoticeThread thread, OpenAlarm alarm) throws SQLException {
            Optional<EscalationRule.Chain> chain = chainOf(alarm);
            if (chain.isEmpty()) {
                return thread;
            }
            boolean needed = alarm.siteId().isEmpty()
                    || at.hours().contain(alarm.siteId().getAsLong(), now);
            Optional<EscalationRule.Due> due = EscalationRule.decide(thread, alarm, chain.get(), needed, now);
            if (due.isEmpty()) {
                return thread;
            }
            Content content = at.texts().escalation(alarm, thread.toldAt().orElseThrow(), now);
            String state = "escalation-" + due.get().after().escalations();
            for (Recipient person : recipients) {
                boolean next =
                        due.get().accounts().contains(person.accountId()) && person.wants(NoticeEvent.ESCALATION);
                for (String channel : next ? person.channels() : List.<String>of()) {
                    // Whoever made the chain wants them told at any hour.
                    add(thread, NoticeKind.ESCALATION, state, new To(person, channel, now), alarm.severity(), content);
                }
            }
            return due.get().after();
        }

        private Optional<EscalationRule.Chain> chainOf(OpenAlarm alarm) {
            Optional<Long> customer = alarm.customerId().isPresent()
                    ? Optional.of(alarm.customerId().getAsLong())
                    : Optional.empty();
            return chains.stream()
                    .filter(chain -> chain.customerId().equals(customer))
                    .findFirst()
                    .or(() -> chains.stream()
                            .filter(chain -> chain.customerId().isEmpty())
                            .findFirst())
                    .map(ChainTable::rule);
        }

        private void end(NoticeThread thread, Step.End end) throws SQLException {
            ThreadTable.update(connection, end.after());
            Optional<OpenAlarm> alarm = end.told() ? at.alarms().episode(thread.episodeId()) : Optional.empty();
            // Whoever shelved it wants to hear nothing of it, its end included.
            if (alarm.isEmpty() || alarm.get().operator() == OperatorState.SHELVED) {
                return;
            }
            Content content = at.texts()
                    .clear(alarm.get(), thread.clearedAt().orElseThrow(), thread.raisedAt(), thread.clearedTimes());
            Set<Told> heard = OutboxTable.heard(connection, thread.id());
            for (Recipient person : recipients) {
                for (String channel : person.wants(NoticeEvent.CLEAR) ? person.channels() : List.<String>of()) {
                    if (heard.contains(new Told(thread.id(), person.accountId(), channel))) {
                        To to = new To(person, channel, person.hours().next(now));
                        add(thread, NoticeKind.CLEAR, "clear", to, alarm.get().severity(), content);
                    }
                }
            }
        }

        /** To whom, how, and from when. */
        private record To(Recipient person, String channel, Instant due) {}

        private void add(NoticeThread thread, NoticeKind kind, String state, To to, Severity severity, Content content)
                throws SQLException {
            OutboxTable.add(
                    connection,
                    new OutboxTable.Fresh(
                            Optional.of(thread.id()),
                            kind,
                            state,
                            to.person().accountId(),
                            to.channel(),
                            severity,
                            content,
                            to.due(),
                            at.giveUp(to.due())),
                    now);
        }
    }
}
