package org.roundsman.notices.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.Digest;
import org.roundsman.notices.NoticeChoices;
import org.roundsman.notices.NoticeEvent;
import org.roundsman.notices.thread.OwnHours;
import org.roundsman.notices.thread.Recipient;

/** Tables notice_person and notice_person_customer, and who can be reached by what. */
public final class PersonTable {

    public static final String MAIL = "mail";
    public static final String WEBHOOK = "webhook-";

    private PersonTable() {}

    /** What a person chose; empty where they never did. */
    public static Optional<NoticeChoices> choices(Connection connection, long account) throws SQLException {
        Set<Long> customers = new HashSet<>(Rows.list(
                connection,
                "select customer_id from notice_person_customer where account_id = ?",
                row -> row.getLong(1),
                account));
        return Rows.first(
                connection,
                "select * from notice_person where account_id = ?",
                row -> choices(row, customers),
                account);
    }

    private static NoticeChoices choices(ResultSet row, Set<Long> customers) throws SQLException {
        return new NoticeChoices(
                row.getBoolean("mail"),
                row.getString("mail_address"),
                Severity.ofCode(row.getInt("severity")),
                NoticeEvent.read(row.getString("events")),
                row.getBoolean("every_customer"),
                customers,
                ZoneId.of(row.getString("time_zone")),
                row.getString("hours"),
                Digest.valueOf(row.getString("digest")),
                row.getInt("digest_hour"),
                row.getInt("digest_weekday"));
    }

    /** Puts what a person chose in the place of what they had. Digests begin anew when their times change. */
    public static void put(Connection connection, long account, NoticeChoices choices, Instant now)
            throws SQLException {
        Rows.run(
                connection,
                "insert into notice_person as p (account_id, mail, mail_address, severity, events, every_customer,"
                        + " time_zone, hours, digest, digest_hour, digest_weekday, digest_until, changed_at) values (?, ?,"
                        + " ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (account_id) do update set mail = excluded.mail,"
                        + " mail_address = excluded.mail_address, severity = excluded.severity, events = excluded.events,"
                        + " every_customer = excluded.every_customer, time_zone = excluded.time_zone, hours ="
                        + " excluded.hours, digest = excluded.digest, digest_hour = excluded.digest_hour, digest_weekday ="
                        + " excluded.digest_weekday, digest_until = case when (p.digest, p.digest_hour, p.digest_weekday,"
                        + " p.time_zone) = (excluded.digest, excluded.digest_hour, excluded.digest_weekday,"
                        + " excluded.time_zone) then p.digest_until else excluded.digest_until end, changed_at ="
                        + " excluded.changed_at",
                account,
                choices.mail(),
                choices.mailAddress(),
                choices.severity().code(),
                NoticeEvent.stored(choices.events()),
                choices.everyCustomer(),
                choices.zone().getId(),
                choices.hours(),
                choices.digest().name(),
                choices.digestHour(),
                choices.digestWeekday(),
                now,
                now);
        Rows.run(connection, "delete from notice_person_customer where account_id = ?", account);
        Rows.run(
                connection,
                "insert into notice_person_customer select ?, id from customer where id = any(?)",
                account,
                choices.customers());
    }

    /** Ways were opened or closed: what was told to others before now is not told by new ones. */
    public static void touch(Connection connection, long account, Instant now) throws SQLException {
        if (Rows.run(connection, "update notice_person set changed_at = ? where account_id = ?", now, account) == 0) {
            put(connection, account, NoticeChoices.untouched(), now);
        }
    }

    /** Digests have told everything up to then. */
    public static void digested(Connection connection, long account, Instant until) throws SQLException {
        Rows.run(connection, "update notice_person set digest_until = ? where account_id = ?", until, account);
    }

    /**
     * Everybody of the firm's own people who can sign in and chose something.
     *
     * @param mailOpen whether mails can be sent at all
     */
    public static List<Recipient> recipients(Connection connection, boolean mailOpen) throws SQLException {
        Map<Long, Set<Long>> customers = new HashMap<>();
        Rows.list(connection, "select account_id, customer_id from notice_person_customer", row -> customers
                .computeIfAbsent(row.getLong(1), id -> new HashSet<>())
                .add(row.getLong(2)));
        Map<Long, List<String>> hooks = new HashMap<>();
        Rows.list(
                connection,
                "select account_id, id from notice_webhook where enabled and secret is not null order by id",
                row -> hooks.computeIfAbsent(row.getLong(1), id -> new ArrayList<>())
                        .add(WEBHOOK + row.getLong(2)));
        return Rows.list(
                connection,
                "select p.* from notice_person p join account a on a.id = p.account_id"
                        + " where not a.disabled and a.role <> 'VIEWER' order by p.account_id",
                row -> recipient(row, customers, hooks, mailOpen));
    }

    private static Recipient recipient(
            ResultSet row, Map<Long, Set<Long>> customers, Map<Long, List<String>> hooks, boolean mailOpen)
            throws SQLException {
        long account = row.getLong("account_id");
        NoticeChoices choices = choices(row, customers.getOrDefault(account, Set.of()));
        List<String> channels = new ArrayList<>();
        if (mailOpen && choices.mail()) {
            channels.add(MAIL);
        }
        channels.addAll(hooks.getOrDefault(account, List.of()));
        return new Recipient(
                account,
                choices,
                OwnHours.of(choices.zone(), choices.hours()),
                Rows.sure(row, "changed_at"),
                Rows.sure(row, "digest_until"),
                channels);
    }
}
