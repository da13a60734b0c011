package org.roundsman.dispatch;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.roundsman.audit.PlainTrail;
import org.roundsman.dispatch.store.Store;
import org.roundsman.dispatch.work.Builder;
import org.roundsman.dispatch.work.DispatchMeters;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.dispatch.work.Pauses;
import org.roundsman.dispatch.work.Post;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.mail.LocalMail;
import org.roundsman.mail.MailServer;
import org.roundsman.reports.ReportLook.PaperSize;
import org.roundsman.system.Rows;
import org.roundsman.testing.TestDatabase;

/** Reports on a database of their own, with a clock that tests turn and figures that they choose. */
final class DispatchFixture {

    static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
    static final LocalDate NOVEMBER = LocalDate.of(2026, 11, 1);

    private static final Map<String, DataSource> KNOWN = new ConcurrentHashMap<>();

    final HandClock clock = new HandClock(Instant.parse("2026-11-03T09:00:00Z"));
    final PlainMaking making = new PlainMaking();
    final SimpleMeterRegistry registry = new SimpleMeterRegistry();
    final Rows rows;
    final Parts parts;
    final ReportPlans plans;
    final ReportShelf shelf;
    final Builder builder;
    final MonthDesk desk;

    private DispatchFixture(DataSource database, int mailPort) {
        rows = new Rows(database, "tests");
        parts = new Parts(new Store(database), making, PlainTrail.on(database, clock), new Settings(), clock);
        plans = new ReportPlans(parts);
        shelf = new ReportShelf(parts);
        builder = new Builder(parts, new DispatchMeters(registry));
        desk = new MonthDesk(parts, plans, new MailServer(LocalMail.open(mailPort), clock));
    }

    /** One database for the tests of a class, without reports at the start of each. */
    static DispatchFixture on(String name) {
        return on(name, 25);
    }

    static DispatchFixture on(String name, int mailPort) {
        DataSource database = KNOWN.computeIfAbsent(name, TestDatabase::fresh);
        new Rows(database, "tests").run("truncate report, report_plan, report_brand, customer cascade");
        return new DispatchFixture(database, mailPort);
    }

    /** The same database as after a new start of the service. */
    DispatchFixture startedAgain(String name) {
        return new DispatchFixture(KNOWN.get(name), 25);
    }

    /** The defaults. */
    private record Settings() implements ReportsConfig {

        @Override
        public boolean enabled() {
            return true;
        }

        @Override
        public int lateDays() {
            return 60;
        }

        @Override
        public Optional<String> linkAddress() {
            return Optional.empty();
        }

        @Override
        public Duration firstRetry() {
            return Duration.ofMinutes(1);
        }

        @Override
        public Duration longestRetry() {
            return Duration.ofHours(1);
        }

        @Override
        public Duration giveUpAfter() {
            return Duration.ofHours(48);
        }
    }

    /** A customer with a site in each of these time zones. */
    long customer(String name, String... zones) {
        long id = rows.number("insert into customer (name) values (?) returning id", name);
        for (String zone : zones) {
            rows.number(
                    "insert into site (customer_id, name, time_zone) values (?, ?, ?) returning id",
                    id,
                    "Site in " + zone,
                    zone);
        }
        return id;
    }

    PlanDraft draft(boolean active, int day, int hour, String zone, String... recipients) {
        return new PlanDraft(active, day, hour, zone, "en-GB", PaperSize.A4, List.of(recipients), true, false, 24);
    }

    /** Sent to these when somebody has found it good. */
    void plan(long customer, String... recipients) {
        plans.save(customer, draft(false, 3, 6, "Europe/London", recipients));
    }

    KeptReport report(long id) {
        return shelf.find(CustomerScope.everyone(), id).orElseThrow();
    }

    /** October of a customer, built and to be reviewed. */
    long built(long customer) {
        long id = desk.build(customer, OCTOBER, NOVEMBER);
        finish();
        return id;
    }

    /** Builds and prints whatever there is. */
    void finish() {
        boolean more = true;
        while (more) {
            more = builder.step();
        }
    }

    /** October of a customer, sent. */
    long sent(long customer) {
        long id = built(customer);
        desk.approve(id);
        desk.send(id);
        finish();
        post(letter -> {}).step();
        return id;
    }

    Post post(Post.Carrier carrier) {
        return new Post(parts, carrier, new Pauses(Duration.ofMinutes(1), Duration.ofHours(1), new Random(7)));
    }

    /** What the audit says was done, in order, of a customer. */
    List<String> done(long customer) {
        return rows.list(
                "select action from audit_entry where customer_id = ? order by id", row -> row.getString(1), customer);
    }
}
