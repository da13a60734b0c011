package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.HoursText;
import org.roundsman.mail.MailAddress;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.people.SignedIn;

/** What people chose to be told. For the firm's own people; a viewer gets no notices. Blocks on the database. */
@ApplicationScoped
public class NoticePeople {

    private static final int LONGEST_HOURS = 500;

    private final DataSource database;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    NoticePeople(DataSource database, AuditTrail audit, Clock clock) {
        this.database = database;
        this.audit = audit;
        this.clock = clock;
    }

    /** What that person chose. */
    public NoticeChoices of(SignedIn person) {
        return Surroundings.whole(database, connection -> PersonTable.choices(connection, person.accountId()))
                .orElse(NoticeChoices.untouched());
    }

    /**
     * Takes what that person chooses now.
     *
     * @throws NoticeRejected naming each field that cannot be taken: mailAddress, events, customers, hours, digestHour,
     *     digestWeekday
     */
    public void choose(SignedIn person, NoticeChoices wanted) {
        check(wanted);
        Surroundings.whole(database, connection -> {
            NoticeChoices before =
                    PersonTable.choices(connection, person.accountId()).orElse(NoticeChoices.untouched());
            PersonTable.put(connection, person.accountId(), wanted, clock.instant());
            var changes = FieldSet.between(fields(before), fields(wanted));
            if (!changes.isEmpty()) {
                Subject subject = new Subject("notices", person.accountId(), person.name(), null);
                audit.note(connection, List.of(new Note("changed", subject, changes)));
            }
            return null;
        });
    }

    private static void check(NoticeChoices wanted) {
        Map<String, String> faults = new LinkedHashMap<>();
        boolean addressed = MailAddress.valid(wanted.mailAddress());
        if (wanted.mail() && !addressed || !wanted.mailAddress().isEmpty() && !addressed) {
            faults.put("mailAddress", "This is no mail address such as wren@fernhollow.example.");
        }
        if (!wanted.everyCustomer() && wanted.customers().isEmpty()) {
            faults.put("customers", "Choose at least one customer, or all of them.");
        }
        if (wanted.hours().length() > LONGEST_HOURS) {
            faults.put("hours", "At most " + LONGEST_HOURS + " characters.");
        } else {
            try {
                HoursText.read(wanted.hours());
            } catch (IllegalArgumentException e) {
                faults.put("hours", e.getMessage());
            }
        }
        if (wanted.digestHour() < 0 || wanted.digestHour() > 23) {
            faults.put("digestHour", "An hour from 0 to 23.");
        }
        if (wanted.digestWeekday() < 1 || wanted.digestWeekday() > 7) {
            faults.put("digestWeekday", "1 for Monday to 7 for Sunday.");
        }
        if (!faults.isEmpty()) {
            throw new NoticeRejected(faults);
        }
    }

    private static FieldSet fields(NoticeChoices of) {
        String events = of.events().stream().sorted().map(NoticeEvent::word).collect(Collectors.joining(", "));
        String customers = of.customers().stream().sorted().map(String::valueOf).collect(Collectors.joining(", "));
        return new FieldSet()
                .with("mail", of.mail() ? "on" : "off")
                .with("mail address", of.mailAddress())
                .with("from severity", of.severity().word())
                .with("events", events)
                .with("customers", of.everyCustomer() ? "all" : customers)
                .with("time zone", of.zone().getId())
                .with("hours", of.hours())
                .with("digest", of.digest().word())
                .with("digest hour", of.digestHour())
                .with("digest weekday", of.digestWeekday());
    }
}
