package org.roundsman.notices;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.store.OutboxTable;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.text.Content;
import org.roundsman.notices.text.NoticeKind;
import org.roundsman.notices.thread.Recipient;

/** Writes the daily and weekly summaries that are due into the outbox. */
final class Digesting {

    private static final Comparator<OpenAlarm> WORST_FIRST =
            Comparator.comparing(OpenAlarm::severity).reversed().thenComparing(OpenAlarm::began);

    private final Surroundings at;

    Digesting(Surroundings at) {
        this.at = at;
    }

    void run() {
        at.whole(connection -> {
            for (Recipient person :
                    PersonTable.recipients(connection, at.mailOpen().getAsBoolean())) {
                NoticeChoices chosen = person.choices();
                Optional<Instant> due = chosen.digest()
                        .latestDue(at.now(), chosen.zone(), chosen.digestHour(), chosen.digestWeekday())
                        .filter(time -> time.isAfter(person.digestUntil()));
                if (due.isPresent()) {
                    write(connection, person, due.get());
                }
            }
            return null;
        });
    }

    private void write(Connection connection, Recipient person, Instant due) throws SQLException {
        Instant from = person.digestUntil();
        List<OpenAlarm> open = at.alarms().active().stream()
                .filter(alarm -> alarm.causedBy().isEmpty() && !alarm.planned() && mine(alarm, person))
                .sorted(WORST_FIRST)
                .toList();
        List<OpenAlarm> over = at.alarms().clearedSince(from).stream()
                .filter(alarm -> alarm.causedBy().isEmpty() && mine(alarm, person))
                .sorted(WORST_FIRST)
                .toList();
        Content content = at.texts().digest(open, over, from, person.choices().zone());
        Severity worst = open.isEmpty() ? Severity.INDETERMINATE : open.get(0).severity();
        for (String channel : person.channels()) {
            OutboxTable.add(
                    connection,
                    new OutboxTable.Fresh(
                            Optional.empty(),
                            NoticeKind.DIGEST,
                            "digest-" + due,
                            person.accountId(),
                            channel,
                            worst,
                            content,
                            at.now(),
                            at.giveUp(at.now())),
                    at.now());
        }
        PersonTable.digested(connection, person.accountId(), due);
    }

    private static boolean mine(OpenAlarm alarm, Recipient person) {
        return person.hearsOf(alarm.customerId())
                && alarm.severity().atLeast(person.choices().severity());
    }
}
