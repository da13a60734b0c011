package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.fleet.TransferFixture.unique;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jboss.logging.Logger;
import org.junit.jupiter.api.Test;

/** 20,000 rows, on a real PostgreSQL. How long they take is logged and not asserted. */
@QuarkusTest
class ImportSizeDbTest {

    private static final Logger LOG = Logger.getLogger(ImportSizeDbTest.class);
    private static final int ROWS = 20_000;
    private static final int SITES = 100;

    @Inject
    TransferFixture transfer;

    @Inject
    Credentials credentials;

    @Inject
    Clock clock;

    private String customer;
    private Instant since;

    private String sites() {
        StringBuilder text = new StringBuilder("customer,site,time_zone\n");
        for (int i = 0; i < SITES; i++) {
            text.append(customer).append(",Site ").append(i).append(",Europe/Berlin\n");
        }
        return text.toString();
    }

    /** Row n of the file is device n - 2. */
    private StringBuilder devices(String keys) {
        StringBuilder text = new StringBuilder("customer,site,device,kind,host,credentials,place\n");
        for (int i = 0; i < ROWS; i++) {
            int site = i % SITES;
            int number = i / SITES;
            text.append(customer).append(",Site ").append(site).append(",AP ").append(number);
            text.append(",access point,10.")
                    .append(site)
                    .append('.')
                    .append(number / 200)
                    .append('.');
            text.append(number % 200 + 1).append(',').append(keys).append(",\"hall, \"\"north\"\"\"\n");
        }
        return text;
    }

    private void lap(String what) {
        Instant now = clock.instant();
        if (since != null) {
            LOG.infof("%s: %d ms", what, Duration.between(since, now).toMillis());
        }
        since = now;
    }

    @Test
    void twentyThousandDevicesComeInAndOutAgain() {
        customer = unique("Thistledown Timber");
        credentials.add(CredentialDraft.community(null, customer + " keys", 2, "timber-secret"));
        long account = transfer.account();
        lap("");
        ImportRun run = transfer.check(
                account,
                "customer\n" + customer + "\n",
                sites(),
                devices(customer + " keys").toString());
        lap("dry run of 20,000 new devices");
        assertThat(run.count(ImportOutcome.NEW)).isEqualTo(ROWS + SITES + 1);
        int before = transfer.fleetChanges();
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        lap("apply of 20,000 new devices");
        transfer.awaitFleetChanges(before + 1);
        long id = transfer.number("select id from customer where name = '" + customer + "'");
        assertThat(transfer.number(
                        "select count(*) from device d join site s on s.id = d.site_id where customer_id = " + id))
                .isEqualTo(ROWS);
        assertThat(transfer.number("select count(*) from audit_entry where subject = 'device' and customer_id = " + id))
                .isEqualTo(ROWS);
        String exported = transfer.export(TransferTable.DEVICES, id);
        lap("export of 20,000 devices");
        ImportRun again = transfer.check(account, exported);
        lap("dry run of the same 20,000 devices");
        assertThat(transfer.fleetChanges())
                .as("told once, and by nothing that is the same")
                .isEqualTo(before + 1);
        assertThat(again.count(ImportOutcome.SAME)).isEqualTo(ROWS).isEqualTo(again.rows());
        ImportRun moved = transfer.check(account, exported.replace(",10.", ",10.1"));
        lap("dry run of 20,000 changed devices");
        assertThat(moved.count(ImportOutcome.CHANGED)).isEqualTo(ROWS);
        assertThat(transfer.apply(account, moved.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        lap("apply of 20,000 changed devices");
    }

    @Test
    void oneFaultInRow19999KeepsAllOfItOut() {
        customer = unique("Hotel Brackwater");
        credentials.add(CredentialDraft.community(null, customer + " keys", 2, "water-secret"));
        long account = transfer.account();
        String[] rows = devices(customer + " keys").toString().split("\n");
        rows[19_998] = rows[19_998].replace("access point", "toaster"); // the header is row 1
        ImportRun run = transfer.check(account, "customer\n" + customer + "\n", sites(), String.join("\n", rows));
        assertThat(run.count(ImportOutcome.REFUSED)).isEqualTo(1);
        assertThat(run.applicable()).isFalse();
        assertThat(transfer.rows(account, run.id(), ImportOutcome.REFUSED))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.row()).isEqualTo(19_999);
                    assertThat(row.faults()).containsOnlyKeys("kind");
                });
        assertThat(transfer.number("select count(*) from customer where name = '" + customer + "'"))
                .isZero();
    }

    /** The database refuses what nobody foresaw: row 19,999 of the writing fails, and nothing of it stays. */
    @Test
    void aFailureOfTheDatabaseInRow19999LeavesNothingBehind() {
        customer = unique("Pebblegate Dental");
        credentials.add(CredentialDraft.community(null, customer + " keys", 2, "pebble-secret"));
        long account = transfer.account();
        ImportRun run = transfer.check(
                account,
                "customer\n" + customer + "\n",
                sites(),
                devices(customer + " keys").toString());
        transfer.run("alter table device add constraint planted check (host <> '10.97.0.200') not valid");
        try {
            ImportRun after = transfer.apply(account, run.id());
            assertThat(after.state()).isEqualTo(ImportRun.State.CHECKED);
            assertThat(after.remark()).contains("Nothing was written");
        } finally {
            transfer.run("alter table device drop constraint planted");
        }
        assertThat(transfer.number("select count(*) from customer where name = '" + customer + "'"))
                .isZero();
        assertThat(transfer.number(
                        "select count(*) from audit_entry where subject = 'import' and subject_id = " + run.id()))
                .isZero();
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
    }
}
