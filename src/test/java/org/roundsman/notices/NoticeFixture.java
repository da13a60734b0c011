package org.roundsman.notices;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javax.sql.DataSource;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.send.SendFailure;
import org.roundsman.notices.store.ChainTable;
import org.roundsman.notices.store.OutboxTable.Claimed;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.Rows;
import org.roundsman.notices.text.Links;
import org.roundsman.notices.text.Texts;
import org.roundsman.testing.TestDatabase;

/** Notices on a database of their own, with alarms, a clock and receivers that tests set. */
final class NoticeFixture {

    /** A Wednesday, 12:00 in Berlin. */
    static final Instant NOON = Instant.parse("2026-03-04T11:00:00Z");

    final SetClock clock = new SetClock(NOON);
    final FakeAlarms alarms = new FakeAlarms();
    final List<Claimed> arrived = new ArrayList<>();
    final DataSource database;
    final long customer;
    final long otherCustomer;
    Function<Claimed, Optional<SendFailure>> receiver = message -> Optional.empty();
    boolean siteNeeded = true;
    boolean mailOpen = true;
    private final NoticesConfig config;

    NoticeFixture(String name, NoticesConfig config) {
        this(TestDatabase.fresh(name), config);
    }

    /** On a database that holds nothing of these. */
    NoticeFixture(DataSource database, NoticesConfig config) {
        this.config = config;
        this.database = database;
        customer = id("insert into customer (name) values ('Saltmarsh Ferry Line') returning id");
        otherCustomer = id("insert into customer (name) values ('Pebblegate Dental') returning id");
    }

    private static final Map<String, DataSource> KNOWN = new ConcurrentHashMap<>();

    /** One database for many tests, empty at the start of each. */
    static NoticeFixture shared(String name, NoticesConfig config) {
        DataSource database = KNOWN.computeIfAbsent(name, TestDatabase::fresh);
        empty(database);
        return new NoticeFixture(database, config);
    }

    private static void empty(DataSource database) {
        Surroundings.whole(database, c -> {
            Rows.run(c, "truncate notice_outbox, notice_thread, account, customer cascade");
            return Rows.run(c, "update notice_cursor set change_id = 0");
        });
    }

    Surroundings surroundings() {
        return with(alarms);
    }

    Surroundings with(AlarmSource source) {
        Texts texts = new Texts(new Links(config.baseUrl()), true);
        return new Surroundings(database, source, (site, at) -> siteNeeded, () -> mailOpen, texts, config, clock);
    }

    long id(String sql, Object... parameters) {
        return Surroundings.whole(database, c -> Rows.first(c, sql, row -> row.getLong(1), parameters))
                .orElseThrow();
    }

    List<String> texts(String sql, Object... parameters) {
        return Surroundings.whole(database, c -> Rows.list(c, sql, row -> row.getString(1), parameters));
    }

    /** Somebody who wants mails about everything from minor on, changed as the test wants it. */
    long person(String name, UnaryOperator<NoticeChoices> change) {
        long account =
                id("insert into account (name, role, password_hash) values (?, 'TECHNICIAN', 'x') returning id", name);
        NoticeChoices usual = new NoticeChoices(
                true,
                name + "@fernhollow.example",
                Severity.MINOR,
                EnumSet.allOf(NoticeEvent.class),
                true,
                Set.of(),
                java.time.ZoneId.of("Europe/Berlin"),
                "",
                Digest.NONE,
                7,
                1);
        Surroundings.whole(database, c -> {
            PersonTable.put(c, account, change.apply(usual), clock.instant());
            return null;
        });
        return account;
    }

    long person(String name) {
        return person(name, choices -> choices);
    }

    void chain(EscalationChain chain) {
        Surroundings.whole(database, c -> ChainTable.put(c, chain));
    }

    FakeAlarms.Alarm alarm(long id) {
        return alarms.alarm(id, customer);
    }

    FakeAlarms.Alarm raised(long id, Severity severity) {
        FakeAlarms.Alarm alarm = alarm(id);
        alarms.raise(alarm, severity, clock.instant());
        return alarm;
    }

    void clear(FakeAlarms.Alarm alarm) {
        alarms.clear(alarm, clock.instant());
    }

    /** A run of the service as it would start now: nothing is remembered but what the database holds. */
    void run() {
        Surroundings at = surroundings();
        new Telling(at).run();
        new Digesting(at).run();
        sending().claim(1_000).forEach(sending()::attempt);
    }

    Sending sending() {
        return new Sending(surroundings(), this::take, new Random(7));
    }

    private void take(Claimed message) throws SendFailure {
        Optional<SendFailure> failure = receiver.apply(message);
        if (failure.isPresent()) {
            throw failure.get();
        }
        arrived.add(message);
    }

    void after(Duration time) {
        clock.forward(time);
        run();
    }

    void minutes(long minutes) {
        after(Duration.ofMinutes(minutes));
    }

    /** Kinds of what arrived so far, in order. */
    List<String> kinds() {
        return arrived.stream().map(message -> message.kind().word()).toList();
    }

    /** What waits, is sent, given up and so on: state and which state it tells. */
    List<String> outbox() {
        return texts("select state || ' ' || state_key from notice_outbox order by id");
    }
}
