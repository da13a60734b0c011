package org.roundsman.fleet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.awaitility.Awaitility.await;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;

/** Imports and exports for tests, with an account of their own. */
@ApplicationScoped
class TransferFixture {

    static final CustomerScope ALL = CustomerScope.everyone();
    static final ImportRights RIGHTS = new ImportRights(ALL, true);

    private final FleetImport imports;
    private final FleetExport exports;
    private final DataSource database;
    private final AtomicInteger fleetChanges = new AtomicInteger();

    TransferFixture(FleetImport imports, FleetExport exports, DataSource database) {
        this.imports = imports;
        this.exports = exports;
        this.database = database;
    }

    void fleetChanged(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        fleetChanges.incrementAndGet();
    }

    int fleetChanges() {
        return fleetChanges.get();
    }

    /** They are told right after the commit that others see. */
    void awaitFleetChanges(int expected) {
        await().atMost(Duration.ofSeconds(20)).until(() -> fleetChanges.get() == expected);
    }

    /** A name that nothing else has. */
    static String unique(String name) {
        return name + " " + UUID.randomUUID().toString().substring(0, 8);
    }

    long account() {
        return number("insert into account (name, role, password_hash) values ('importer " + UUID.randomUUID()
                + "', 'OWNER', 'none') returning id");
    }

    long number(String sql) {
        try (var connection = database.getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    void run(String sql) {
        try (var connection = database.getConnection();
                var statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    static ImportFile file(String text) {
        return new ImportFile("file.csv", text.getBytes(UTF_8));
    }

    /** The dry run of texts, ended. */
    ImportRun check(long account, String... texts) {
        List<ImportFile> files = new ArrayList<>();
        for (String text : texts) {
            files.add(file(text));
        }
        return ended(account, imports.check(RIGHTS, account, files, false).id());
    }

    ImportRun apply(long account, long id) {
        imports.apply(RIGHTS, account, id);
        return ended(account, id);
    }

    ImportRun ended(long account, long id) {
        return await().atMost(Duration.ofMinutes(3))
                .until(() -> imports.find(account, id).orElseThrow(), run -> !run.working());
    }

    /** Every row with that outcome, or (null) all. */
    List<ImportRow> rows(long account, long id, ImportOutcome outcome) {
        return imports.rows(account, id, Optional.ofNullable(outcome), false, 1, 30_000)
                .items();
    }

    String export(TransferTable table, Long customer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            exports.write(ALL, Optional.ofNullable(customer), table, false, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(UTF_8);
    }
}
