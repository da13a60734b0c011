package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.fleet.TransferFixture.unique;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Models out to a file and in again. */
@QuarkusTest
class ModelFilesDbTest {

    private static final String HEADER = "maker,model,kind,radios,bands_ghz,list_price,currency,firmware_line,warranty,"
            + "warranty_from,warranty_months,end_of_sale,end_of_sale_source,note\r\n";

    @Inject
    TransferFixture transfer;

    @Inject
    FleetImport imports;

    @Inject
    Models models;

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    private long account;
    private String maker;
    private String line;

    @BeforeEach
    void aMaker() {
        account = transfer.account();
        maker = unique("Tamarack");
        line = unique("TR access points");
        transfer.run("insert into firmware_line (name, scheme) values ('" + line + "', 'SEMANTIC')");
    }

    private String row(String model, String price) {
        return maker + "," + model + ",access point,2,\"5, 2.4\"," + price + ",eur," + line
                + ",months,purchase,36,2026-03-31,\"notice 7, invented\",=sum\r\n";
    }

    private Model model(String name) {
        return models.all().stream()
                .filter(model -> model.maker.equals(maker) && model.name.equals(name))
                .findFirst()
                .orElseThrow();
    }

    private String[] outcomes(long run) {
        return transfer.rows(account, run, null).stream()
                .map(row -> row.name() + " " + row.outcome().word())
                .toArray(String[]::new);
    }

    @Test
    void whatARowDoesIsSeenBeforeAnythingIsWritten() {
        models.add(ModelDraft.plain(maker, "TR-10", DeviceKind.ACCESS_POINT));
        ImportRun run = transfer.check(account, HEADER + row("TR-10", "119") + row("TR-22", "249"));
        assertThat(outcomes(run.id())).containsExactly("TR-10 changed", "TR-22 new");
        assertThat(model("TR-10").listPrice).isNull();
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        Model written = model("TR-22");
        assertThat(written.listPrice).isEqualTo(new BigDecimal("249.00"));
        assertThat(written.currency).isEqualTo("EUR");
        assertThat(written.bands).isEqualTo("2.4,5");
        assertThat(written.termsMonths).isEqualTo((short) 36);
        assertThat(written.endOfSale).isEqualTo(LocalDate.of(2026, 3, 31));
        assertThat(written.note).isEqualTo("=sum");
        assertThat(written.firmwareLineId)
                .isEqualTo(transfer.number("select id from firmware_line where name = '" + line + "'"));
        assertThat(transfer.number("select count(*) from audit_entry where subject = 'model' and action = 'changed'"
                        + " and subject_name = '" + maker + " TR-10'"))
                .isEqualTo(1);
        ImportRun again = transfer.check(account, HEADER + row("TR-10", "119.0") + row("TR-22", "249.00"));
        assertThat(outcomes(again.id())).containsExactly("TR-10 same", "TR-22 same");
        assertThat(again.applicable()).isFalse();
    }

    @Test
    void whatIsExportedComesBackUnchanged() {
        ImportRun run = transfer.check(account, HEADER + row("'-TR; \"10\"", "119") + row("TR-22", "249"));
        transfer.apply(account, run.id());
        ImportRun again = transfer.check(account, transfer.export(TransferTable.MODELS, null));
        assertThat(again.count(ImportOutcome.SAME)).isEqualTo(again.rows()).isGreaterThanOrEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "249 | 249,5 x | list_price | must be an amount",
                "access point | bridge | kind | must be access point, switch or gateway",
                "months | years | warranty | must be months, lifetime after sale",
                "36 | many | warranty_months | whole number",
                "2026-03-31 | 2026-02-30 | end_of_sale | day of the calendar",
                "purchase | '' | warranty_from | which day",
                "eur | '' | currency | needs its currency",
                "TR access points | no such line | firmware_line | there is no firmware line"
            })
    void aRefusedRowNamesColumnAndReason(String right, String wrong, String column, String reason) {
        String text = HEADER + row("TR-22", "249").replace(right.equals("TR access points") ? line : right, wrong);
        ImportRun run = transfer.check(account, text.replace("249,5 x", "\"249,5 x\""));
        ImportRow row = transfer.rows(account, run.id(), ImportOutcome.REFUSED).get(0);
        assertThat(row.faults()).containsKey(column);
        assertThat(row.faults().get(column)).contains(reason);
        assertThat(row.within()).isEqualTo(maker);
    }

    @Test
    void twoRowsAboutOneModelAndTwoModelsOfOneAnswerAreRefused() {
        String id = "1.3.6.1.4.1.32473.77." + Math.abs(UUID.randomUUID().hashCode());
        ImportRun run = transfer.check(
                account,
                "maker,model,kind,object_id\r\n" + maker + ",TR-1,access point," + id + "\r\n" + maker
                        + ",TR-2,access point," + id + "\r\n" + maker + ",tr-1,access point,\r\n");
        assertThat(outcomes(run.id())).containsExactly("TR-1 new", "TR-2 refused", "tr-1 refused");
        assertThat(run.applicable()).isFalse();
    }

    @Test
    void modelsMaySwapWhatTheyAnswerWith() {
        String first = "1.3.6.1.4.1.32473.78." + Math.abs(UUID.randomUUID().hashCode());
        String header = "maker,model,kind,object_id\r\n";
        String swapped = header + maker + ",TR-1,access point," + first + ".2\r\n" + maker + ",TR-2,access point,"
                + first + ".1\r\n";
        ImportRun run = transfer.check(account, swapped);
        transfer.apply(account, run.id());
        ImportRun back = transfer.check(
                account,
                swapped.replace(first + ".1", "x")
                        .replace(first + ".2", first + ".1")
                        .replace("x", first + ".2"));
        assertThat(transfer.apply(account, back.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        assertThat(model("TR-1").objectId).isEqualTo(first + ".1");
        assertThat(model("TR-2").objectId).isEqualTo(first + ".2");
    }

    @Test
    void theKindOfAModelStaysWhileDevicesAreOfIt() {
        models.add(ModelDraft.plain(maker, "TR-1", DeviceKind.ACCESS_POINT));
        Customer customer = customers.add(new CustomerDraft(unique("Saltmarsh"), ""));
        Site site = sites.add(
                customer.id,
                new SiteDraft("Pier", "Europe/Berlin", "", "", "", "", "", null, null, List.of(), List.of()));
        credentials.add(CredentialDraft.community(customer.id, "pier keys", 2, "quayside-secret"));
        String change = "maker,model,kind\r\n" + maker + ",TR-1,switch\r\n";
        String device = "customer,site,device,kind,host,credentials,maker,model\r\n" + customer.name
                + ",Pier,Gangway,access point,192.0.2.9,pier keys," + maker + ",TR-1\r\n";
        transfer.apply(account, transfer.check(account, device).id());
        assertThat(devices.ofSite(TransferFixture.ALL, site.id)).hasSize(1);
        ImportRun refused = transfer.check(account, change);
        assertThat(transfer.rows(account, refused.id(), ImportOutcome.REFUSED))
                .extracting(row -> row.faults().get("kind"))
                .containsExactly("devices are of this model as access point; give them another model first");
        transfer.run("update device set model_id = null where site_id = " + site.id);
        assertThat(outcomes(transfer.check(account, change).id())).containsExactly("TR-1 changed");
    }

    /** A device may be of a model that the same upload adds, and is refused with it. */
    @Test
    void devicesNameModelsOfTheSameUpload() {
        Customer customer = customers.add(new CustomerDraft(unique("Saltmarsh"), ""));
        Site site = sites.add(
                customer.id,
                new SiteDraft("Pier", "Europe/Berlin", "", "", "", "", "", null, null, List.of(), List.of()));
        credentials.add(CredentialDraft.community(customer.id, "pier keys", 2, "quayside-secret"));
        String device = "customer,site,device,kind,host,credentials,maker,model\r\n" + customer.name
                + ",Pier,Gangway,access point,192.0.2.9,pier keys," + maker + ",TR-22\r\n";
        ImportRun refused = transfer.check(account, device, HEADER + row("TR-22", "cheap"));
        assertThat(transfer.rows(account, refused.id(), ImportOutcome.REFUSED))
                .extracting(row -> row.faults().getOrDefault("model", "own fault"))
                .containsExactly("own fault", "is added by row 2 of file.csv, which is refused");
        ImportRun run = transfer.check(account, device, HEADER + row("TR-22", "249"));
        assertThat(transfer.apply(account, run.id()).state()).isEqualTo(ImportRun.State.APPLIED);
        assertThat(devices.ofSite(TransferFixture.ALL, site.id).get(0).model.id).isEqualTo(model("TR-22").id);
        assertThat(transfer.export(TransferTable.MODELS, customer.id).lines()).hasSize(2);
    }

    /** Somebody who may import the fleet may not change the catalogue by it, nor may a right for one customer. */
    @Test
    void rightsOverTheFleetAreNoneOverTheCatalogue() {
        List<ImportFile> files = List.of(TransferFixture.file(HEADER + row("TR-22", "249")));
        for (ImportRights rights :
                List.of(new ImportRights(TransferFixture.ALL, false), new ImportRights(CustomerScope.of(1), true))) {
            long own = transfer.account();
            ImportRun run =
                    transfer.ended(own, imports.check(rights, own, files, false).id());
            assertThat(imports.rows(own, run.id(), Optional.empty(), false, 1, 10)
                            .items()
                            .get(0)
                            .faults())
                    .containsOnlyKeys("model");
        }
        ImportRun seen = transfer.check(account, HEADER + row("TR-22", "249"));
        imports.apply(new ImportRights(TransferFixture.ALL, false), account, seen.id());
        ImportRun after = transfer.ended(account, seen.id());
        assertThat(after.state()).isEqualTo(ImportRun.State.CHECKED);
        assertThat(after.count(ImportOutcome.REFUSED)).isEqualTo(1);
    }
}
