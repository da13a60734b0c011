package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.fleet.TransferFixture.ALL;
import static org.roundsman.fleet.TransferFixture.unique;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.audit.AuditEntry.FieldChange;

@QuarkusTest
class ImportDbTest {

    private static final String DEVICES = "customer,site,device,kind,host,port,credentials,interval_s\n";

    @Inject
    TransferFixture transfer;

    @Inject
    FleetImport imports;

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    @Inject
    Clock clock;

    private long account;
    private String name;
    private Customer customer;
    private Site site;

    @BeforeEach
    void aCustomerWithOneSite() {
        account = transfer.account();
        name = unique("Saltmarsh Ferry Line");
        customer = customers.add(new CustomerDraft(name, "invented"));
        site = sites.add(
                customer.id,
                new SiteDraft("Pier 1", "Europe/Berlin", "", "", "", "", "", null, null, List.of(), List.of()));
        credentials.add(CredentialDraft.community(customer.id, "pier keys", 2, "quayside-secret"));
    }

    private String device(String device, String host) {
        return name + ",Pier 1," + device + ",access point," + host + ",161,pier keys,60\n";
    }

    private ImportRow only(ImportRun run) {
        List<ImportRow> rows = transfer.rows(account, run.id(), null);
        assertThat(rows).hasSize(1);
        return rows.get(0);
    }

    private Map<String, String> faults(String text) {
        ImportRow row = only(transfer.check(account, text));
        assertThat(row.outcome()).isEqualTo(ImportOutcome.REFUSED);
        return row.faults();
    }

    @Test
    void aWholeCustomerComesInByOneUpload() {
        String fresh = unique("Quillfeather School");
        credentials.add(CredentialDraft.community(null, fresh + " read", 2, "feather-secret"));
        ImportRun run = transfer.check(
                account,
                "customer,serial,site,device,bought_on,price,currency\n" + fresh
                        + ",TR22-1,Main,Hall AP,2026-03-31,189.9,EUR\n",
                DEVICES + fresh + ",Main,Hall AP,access point,192.0.2.1,,\"" + fresh + " read\",\n",
                "customer,site,time_zone,service_hours,contacts,uplink_down_mbit\n" + fresh
                        + ",Main,Europe/Berlin,\"Mon-Fri 08:00-18:00\n"
                        + "Sat 09:00-24:00\",\"Office | keys | +1-555-0101\",\"2,5\"\n",
                "customer,note\n" + fresh + ",invented\n");
        assertThat(run.state()).isEqualTo(ImportRun.State.CHECKED);
        assertThat(run.count(ImportOutcome.NEW)).isEqualTo(4);
        assertThat(customers.all(ALL)).noneMatch(c -> c.name.equals(fresh));
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        Customer made = customers.all(ALL).stream()
                .filter(c -> c.name.equals(fresh))
                .findFirst()
                .orElseThrow();
        Site main = sites.find(ALL, sites.all(ALL, made.id).get(0).id).orElseThrow();
        assertThat(HoursText.lines(main.hours)).containsExactly("Mon-Fri 08:00-18:00", "Sat 09:00-24:00");
        assertThat(main.contacts).containsExactly(new SiteContact("Office", "keys", "+1-555-0101", ""));
        assertThat(main.uplinkDownKbit).isEqualTo(2500);
        Device hall = devices.ofSite(ALL, main.id).get(0);
        assertThat(hall.port).isEqualTo(161);
        assertThat(hall.intervalSeconds).isEqualTo(60);
        assertThat(transfer.number("select count(*) from purchase where serial = 'TR22-1' and price = 189.90"
                        + " and device_id = " + hall.id + " and site_id = " + main.id))
                .isEqualTo(1);
    }

    @Test
    void anEntryStandsInTheAuditForEachRowAndForTheWhole() {
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.1") + device("AP 2", "192.0.2.2"));
        int before = transfer.fleetChanges();
        transfer.apply(account, run.id());
        transfer.awaitFleetChanges(before + 1);
        assertThat(transfer.number("select count(*) from audit_entry where subject = 'device' and action = 'added'"
                        + " and customer_id = " + customer.id))
                .isEqualTo(2);
        assertThat(transfer.number("select count(*) from audit_entry where subject = 'import' and action = 'applied'"
                        + " and subject_id = " + run.id() + " and customer_id = " + customer.id))
                .isEqualTo(1);
    }

    @Test
    void aChangeIsShownColumnByColumnBeforeItIsMade() {
        transfer.apply(
                account,
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1")).id());
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.9"));
        assertThat(only(run).changes()).containsExactly(new FieldChange("host", "192.0.2.1", "192.0.2.9"));
        assertThat(devices.ofSite(ALL, site.id).get(0).host).isEqualTo("192.0.2.1");
        transfer.apply(account, run.id());
        assertThat(devices.ofSite(ALL, site.id)).hasSize(1);
        assertThat(devices.ofSite(ALL, site.id).get(0).host).isEqualTo("192.0.2.9");
        ImportRun same = transfer.check(account, DEVICES + device("AP 1", "192.0.2.9"));
        assertThat(only(same).outcome()).isEqualTo(ImportOutcome.SAME);
        assertThat(same.applicable()).isFalse();
    }

    /** As after a change by hand: the timeline tells, and the fields have the same names. */
    @Test
    void otherCredentialsStandOnTheTimelineOfTheDevice() {
        transfer.apply(
                account,
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1")).id());
        credentials.add(CredentialDraft.community(customer.id, "new keys", 2, "another-secret"));
        String row = device("AP 1", "192.0.2.2").replace("pier keys", "NEW KEYS");
        transfer.apply(account, transfer.check(account, DEVICES + row).id());
        long device = devices.ofSite(ALL, site.id).get(0).id;
        assertThat(transfer.number("select count(*) from device_event where kind = 'CREDENTIALS_CHANGED'"
                        + " and old_value = 'pier keys' and new_value = 'new keys' and device_id = " + device))
                .isEqualTo(1);
        assertThat(transfer.number("select count(*) from audit_entry where subject = 'device' and subject_id = "
                        + device + " and changes @> '[{\"field\": \"address\", \"old\": \"192.0.2.1\"}]'"))
                .isEqualTo(1);
    }

    /** Of credentials that have one name, those of the site win over those of the customer. */
    @Test
    void credentialsOfTheSiteComeFirst() {
        CredentialDraft draft = CredentialDraft.community(customer.id, "pier keys", 2, "mooring-secret");
        long ofSite = credentials.add(draft.at(site.id)).id;
        transfer.apply(
                account,
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1")).id());
        assertThat(devices.ofSite(ALL, site.id).get(0).credential.id).isEqualTo(ofSite);
    }

    @Test
    void aColumnThatIsLeftOutChangesNothing() {
        transfer.apply(
                account,
                transfer.check(
                                account,
                                "customer,site,device,kind,host,credentials,place,interval_s,paused\n" + name
                                        + ",Pier 1,AP 1,access point,192.0.2.1,pier keys,mast,300,yes\n")
                        .id());
        ImportRun run = transfer.check(
                account,
                "customer,site,device,kind,host,credentials\n" + name + ",Pier 1,AP 1,gateway,192.0.2.1,pier keys\n");
        assertThat(only(run).changes()).containsExactly(new FieldChange("kind", "access point", "gateway"));
        transfer.apply(account, run.id());
        Device device = devices.ofSite(ALL, site.id).get(0);
        assertThat(device.place).isEqualTo("mast");
        assertThat(device.intervalSeconds).isEqualTo(300);
        assertThat(device.paused).isTrue();
    }

    @Test
    void aDeviceIsRecognisedByItsAddressWhenItsNameIsNew() {
        transfer.apply(
                account,
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1")).id());
        ImportRun run = transfer.check(account, DEVICES + device("Gangway", "192.0.2.1"));
        assertThat(only(run).changes()).containsExactly(new FieldChange("device", "AP 1", "Gangway"));
    }

    /** Unique indexes are checked row by row; two devices that swap addresses are in each other's way. */
    @Test
    void devicesMaySwapTheirAddresses() {
        transfer.apply(
                account,
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1") + device("AP 2", "192.0.2.2"))
                        .id());
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.2") + device("AP 2", "192.0.2.1"));
        assertThat(run.count(ImportOutcome.CHANGED)).isEqualTo(2);
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        assertThat(devices.ofSite(ALL, site.id))
                .extracting(d -> d.name + " " + d.host)
                .containsExactly("AP 1 192.0.2.2", "AP 2 192.0.2.1");
    }

    @Test
    void twoRowsAboutOneThingAreRefused() {
        ImportRun run = transfer.check(
                account,
                DEVICES + device("AP 1", "192.0.2.1") + device("ap 1", "192.0.2.2") + device("AP 3", "192.0.2.1"));
        List<ImportRow> rows = transfer.rows(account, run.id(), null);
        assertThat(rows)
                .extracting(ImportRow::outcome)
                .containsExactly(ImportOutcome.NEW, ImportOutcome.REFUSED, ImportOutcome.REFUSED);
        assertThat(rows.get(1).faults().get("device")).contains("row 2 of file.csv is about the same device");
        assertThat(rows.get(2).faults().get("host")).contains("row 2 of file.csv has this address");
    }

    /** The rules are those of entries by hand. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Pier 1,AP,access point,192.0.2.300,161,pier keys,60|host|neither an IPv4",
                "Pier 1,AP,access point,192.0.2.1,0,pier keys,60|port|from 1 to 65535",
                "Pier 1,AP,access point,192.0.2.1,65536,pier keys,60|port|from 1 to 65535",
                "Pier 1,AP,access point,192.0.2.1,snmp,pier keys,60|port|whole number",
                "Pier 1,AP,access point,192.0.2.1,161,pier keys,9|interval_s|from 10 to 3600",
                "Pier 1,AP,toaster,192.0.2.1,161,pier keys,60|kind|access point, switch or gateway",
                "Pier 1,,access point,192.0.2.1,161,pier keys,60|device|must not be empty",
                "Pier 1,AP,access point,192.0.2.1,161,other keys,60|credentials|no SNMP credentials “other keys”",
                "Pier 1,AP,access point,192.0.2.1,161,,60|credentials|name the SNMP credentials",
                "Pier 9,AP,access point,192.0.2.1,161,pier keys,60|site|there is no site of this name",
                "Pier 1,AP,access point,192.0.2.1,161,pier keys|''|7 fields, the header has 8"
            })
    void aRefusedRowNamesColumnAndReason(String row, String column, String reason) {
        assertThat(faults(DEVICES + name + "," + row + "\n").get(column)).contains(reason);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "price,currency#%s,S1,10.5,|currency|needs its currency",
                "price,currency#%s,S1,10.555,EUR|price|at most 2 decimals",
                "price,currency#%s,S1,10.5,JPY|price|at most 0 decimals",
                "price,currency#%s,S1,~1.234,50~,EUR|price|without thousands separators",
                "price,currency#%s,S1,-5,EUR|price|amount such as",
                "price,currency#%s,S1,5,XYZ|currency|ISO 4217",
                "price,currency#%s,S1,5,XTS|currency|no money",
                "bought_on#%s,S1,31.03.2026|bought_on|year-month-day",
                "bought_on#%s,S1,2026-02-30|bought_on|calendar",
                "bought_on#%s,S1,0206-02-03|bought_on|from 1990",
                "bought_on#%s,S1,2099-02-03|bought_on|more than a year ahead",
                "delivered_on#%s,S1,2099-02-03|delivered_on|more than a year ahead",
                "installed_on#%s,S1,2099-02-03|installed_on|more than a year ahead",
                "device#%s,S1,AP 1|site|name the site",
                "site,device#%s,S1,Pier 1,AP 77|device|no device of this name",
                "note#%s,,x|serial|must not be empty"
            })
    void aRefusedPurchaseNamesColumnAndReason(String row, String column, String reason) {
        String text =
                "customer,serial," + row.replace('#', '\n').replace('~', '"').formatted(name) + "\n";
        assertThat(faults(text).get(column)).contains(reason);
    }

    @Test
    void aDeliveryInSomeWeeksIsTaken() {
        String day = LocalDate.now(clock).plusWeeks(6).toString();
        String text = "customer,serial,delivered_on\n" + name + ",S1," + day + "\n";
        assertThat(only(transfer.check(account, text)).outcome()).isEqualTo(ImportOutcome.NEW);
    }

    @Test
    void credentialsOfAnotherCustomerCannotBeNamed() {
        Customer other = customers.add(new CustomerDraft(unique("Orrin & Vale Booksellers"), "invented"));
        credentials.add(CredentialDraft.community(other.id, "their keys", 2, "books-secret"));
        String row = device("AP 1", "192.0.2.1").replace("pier keys", "their keys");
        assertThat(faults(DEVICES + row).get("credentials"))
                .contains("usable here: ")
                .contains("pier keys")
                .doesNotContain("books-secret");
    }

    @Test
    void aFleetThatChangedBetweenDryRunAndApplyIsLeftAlone() {
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.1") + device("AP 2", "192.0.2.2"));
        long key = credentials.usableBy(customer.id).stream()
                .filter(c -> c.name.equals("pier keys"))
                .findFirst()
                .orElseThrow()
                .id;
        devices.add(
                site.id, new DeviceDraft("AP 2", DeviceKind.ACCESS_POINT, "192.0.2.2", 161, key, null, "", 60, false));
        ImportRun again = transfer.apply(account, run.id());
        assertThat(again.state()).isEqualTo(ImportRun.State.CHECKED);
        assertThat(again.remark()).contains("Nothing was written").contains("changed since the dry run");
        assertThat(again.moved()).isEqualTo(1);
        assertThat(devices.ofSite(ALL, site.id)).hasSize(1);
        assertThat(transfer.rows(account, run.id(), ImportOutcome.SAME))
                .extracting(ImportRow::name)
                .containsExactly("AP 2");
        assertThat(transfer.rows(account, run.id(), ImportOutcome.SAME)).allMatch(ImportRow::moved);
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        assertThat(devices.ofSite(ALL, site.id)).hasSize(2);
    }

    @Test
    void whatWasMissingIsAddedAndCheckedAgainWithoutAnotherUpload() {
        ImportRun run =
                transfer.check(account, DEVICES + device("AP 1", "192.0.2.1").replace("pier keys", "new keys"));
        assertThat(run.count(ImportOutcome.REFUSED)).isEqualTo(1);
        assertThatThrownBy(() -> imports.apply(TransferFixture.RIGHTS, account, run.id()))
                .isInstanceOf(InputRejected.class);
        credentials.add(CredentialDraft.community(customer.id, "new keys", 2, "another-secret"));
        imports.checkAgain(TransferFixture.RIGHTS, account, run.id());
        assertThat(transfer.ended(account, run.id()).applicable()).isTrue();
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
    }

    @Test
    void anImportBelongsToItsAccount() {
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.1"));
        long other = transfer.account();
        assertThat(imports.find(other, run.id())).isEmpty();
        assertThatThrownBy(() -> imports.apply(TransferFixture.RIGHTS, other, run.id()))
                .isInstanceOf(InputRejected.class);
        assertThatThrownBy(() -> imports.discard(other, run.id())).isInstanceOf(InputRejected.class);
        assertThatThrownBy(() -> transfer.rows(other, run.id(), null)).isInstanceOf(InputRejected.class);
        imports.discard(account, run.id());
        assertThat(imports.find(account, run.id())).isEmpty();
    }

    @Test
    void aScopeIsNotLeft() {
        CustomerScope elsewhere = CustomerScope.of(customer.id + 1_000_000);
        ImportRun run = imports.check(
                new ImportRights(elsewhere, true),
                account,
                List.of(
                        TransferFixture.file(DEVICES + device("AP 1", "192.0.2.1")),
                        TransferFixture.file("customer\n" + unique("Hotel Brackwater") + "\n")),
                false);
        assertThat(transfer.ended(account, run.id()).count(ImportOutcome.REFUSED))
                .isEqualTo(2);
    }

    @Test
    void importsAreKeptForADay() {
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.1"));
        imports.removeOld();
        assertThat(imports.find(account, run.id())).isPresent();
        transfer.number("update import_run set started_at = started_at - interval '25 hours' where id = " + run.id()
                + " returning id");
        imports.removeOld();
        assertThat(imports.find(account, run.id())).isEmpty();
    }

    /** A stop in the middle: the database says "at work", and nobody works on it. */
    @Test
    void anImportThatWasCutOffSaysSo() {
        ImportRun run = transfer.check(account, DEVICES + device("AP 1", "192.0.2.1"));
        transfer.number("update import_run set state = 'APPLYING' where id = " + run.id() + " returning id");
        ImportRun after = imports.find(account, run.id()).orElseThrow();
        assertThat(after.state()).isEqualTo(ImportRun.State.CHECKED);
        assertThat(after.remark()).contains("was stopped").contains("Nothing was written");
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
    }
}
