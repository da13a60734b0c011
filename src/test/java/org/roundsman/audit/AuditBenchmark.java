package org.roundsman.audit;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** Measures the search of the audit on a PostgreSQL with fsync on. Argument: number of entries (1000000). */
public final class AuditBenchmark {

    private static final int TIMES = 20;
    private static final Clock CLOCK = Clock.systemUTC();

    private final DataSource source;
    private final AuditLog log;

    private AuditBenchmark(DataSource source) {
        this.source = source;
        this.log = new AuditLog(source);
    }

    public static void main(String[] arguments) throws Exception {
        int entries = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1_000_000;
        Path folder = Files.createTempDirectory("audit-benchmark");
        try (EmbeddedPostgres postgres = EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("data"))
                .setServerConfig("fsync", "on")
                .setServerConfig("shared_buffers", "256MB")
                .start()) {
            DataSource source = postgres.getPostgresDatabase();
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:db/migration")
                    .load()
                    .migrate();
            AuditBenchmark benchmark = new AuditBenchmark(source);
            benchmark.fill(entries);
            benchmark.search(entries);
        }
    }

    /** Two years of 200 customers with 12,000 devices; one entry in a thousand is of a rare kind. */
    private void fill(int entries) throws SQLException {
        Instant before = CLOCK.instant();
        execute("insert into audit_entry (at, actor, account_id, via, token, address, action, subject, subject_id,"
                + " subject_name, customer_id, changes)"
                + " select timestamptz '2024-01-01' + n * interval '63 seconds', 'person-' || n % 40, n % 40,"
                + " case when n % 5 = 0 then 'API' else 'PAGE' end, '', '192.0.2.' || n % 250,"
                + " case when n % 1000 = 0 then 'removed' when n % 3 = 0 then 'added' else 'changed' end,"
                + " case when n % 1000 = 1 then 'credentials' when n % 7 = 0 then 'site' else 'device' end, n % 12000,"
                + " 'ap-' || n % 12000 || '.site-' || n % 900 || '.example', n % 200,"
                + " jsonb_build_array(jsonb_build_object('field', 'place', 'old', 'hall ' || n % 500, 'new',"
                + " 'roof ' || (n * 7) % 500), jsonb_build_object('field', 'address', 'old', '', 'new',"
                + " '10.' || n % 200 || '.' || n % 251 || '.' || n % 241)) from generate_series(1, " + entries + ") n");
        say(
                "%,d entries added in %.1f s",
                entries, Duration.between(before, CLOCK.instant()).toMillis() / 1e3);
        execute("vacuum analyze audit_entry");
        say(
                "%s bytes an entry, indexes included; %s without",
                one("select pg_total_relation_size('audit_entry') / count(*)" + " from audit_entry"),
                one("select pg_relation_size('audit_entry') / count(*) from audit_entry"));
    }

    private void search(int entries) {
        Instant middle = Instant.parse("2024-01-01T00:00:00Z").plusSeconds(63L * entries / 2);
        Map<String, AuditQuery> queries = new LinkedHashMap<>();
        queries.put("newest page", AuditQuery.all());
        queries.put("one device", new AuditQuery("", "", "device", 4711L, null, "", null, null));
        queries.put("one customer", new AuditQuery("", "", "", null, 17L, "", null, null));
        queries.put("one customer's removals", new AuditQuery("", "", "", null, 100L, "removed", null, null));
        queries.put("one person", new AuditQuery("", "PERSON-7", "", null, null, "", null, null));
        queries.put("rare kind", new AuditQuery("", "", "credentials", null, null, "", null, null));
        queries.put("a name", words("ap-4711"));
        queries.put("an address", words("10.17.34.56"));
        queries.put("the beginning of a name", words("ap-471"));
        queries.put("a word that every entry has", words("example"));
        queries.put("a word that many have", words("roof"));
        queries.put(
                "a word that one in 500 has, with a kind",
                new AuditQuery("roof 77", "", "site", null, null, "", null, null));
        queries.put("a word that none has", words("kittiwake"));
        queries.put(
                "a word and a day", new AuditQuery("hall", "", "", null, null, "", middle, middle.plusSeconds(86_400)));
        queries.forEach((name, query) ->
                measure(name, () -> log.find(query, Optional.empty(), 51).size()));
        AuditLog.Place deep = new AuditLog.Place(middle, entries / 2);
        measure("page in the middle", () -> log.find(AuditQuery.all(), Optional.of(deep), 51)
                .size());
        measure("choices of the form", () -> log.choices().actors().size());
    }

    private static AuditQuery words(String text) {
        return new AuditQuery(text, "", "", null, null, "", null, null);
    }

    private interface Question {
        int ask();
    }

    private static void measure(String name, Question question) {
        long[] took = new long[TIMES];
        int found = 0;
        for (int i = 0; i < TIMES; i++) {
            Instant before = CLOCK.instant();
            found = question.ask();
            took[i] = Duration.between(before, CLOCK.instant()).toNanos();
        }
        double first = took[0] / 1e6;
        Arrays.sort(took);
        say(
                "%-45s %3d found, first %.1f ms, median %.1f ms, longest %.1f ms",
                name, found, first, took[TIMES / 2] / 1e6, took[TIMES - 1] / 1e6);
    }

    private void execute(String statement) throws SQLException {
        try (Connection connection = source.getConnection();
                Statement runner = connection.createStatement()) {
            runner.execute(statement);
        }
    }

    private String one(String query) throws SQLException {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static void say(String format, Object... values) {
        System.out.println(
                String.format(java.util.Locale.ENGLISH, format, List.of(values).toArray()));
    }
}
