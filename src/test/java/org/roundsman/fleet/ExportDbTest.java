package org.roundsman.fleet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.fleet.TransferFixture.unique;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.postgresql.PGConnection;

@QuarkusTest
class ExportDbTest {

    /** Every sign that means something to CSV or to a spreadsheet program. */
    private static final String ODD = "=1+1, \"quoted\"; 'x' \u00fc\u20ac\n-second line\r\n@third";

    @Inject
    TransferFixture transfer;

    @Inject
    FleetExport exports;

    @Inject
    Customers customers;

    @Inject
    Sites sites;

    @Inject
    Devices devices;

    @Inject
    Credentials credentials;

    @Inject
    Models models;

    @Inject
    AgroalDataSource database;

    private long account;
    private Customer customer;

    @BeforeEach
    void aCustomerFullOfOddTexts() {
        account = transfer.account();
        customer = customers.add(new CustomerDraft(unique("-Saltmarsh, \"Ferry\" Line"), ODD));
        Site site = sites.add(customer.id, oddSite());
        Credential key = credentials.add(CredentialDraft.community(customer.id, "@keys", 2, "quayside-secret"));
        Model model = new Model();
        model.maker = "Tamarack Radio";
        model.name = "TR-22 invented";
        model.kind = DeviceKind.ACCESS_POINT;
        Device device = devices.add(
                site.id,
                new DeviceDraft(
                        "'=AP",
                        DeviceKind.ACCESS_POINT,
                        "2001:db8::1",
                        1161,
                        key.id,
                        models.ensure(model).id,
                        ODD,
                        90,
                        true));
        devices.add(
                site.id,
                new DeviceDraft("Switch", DeviceKind.NETWORK_SWITCH, "sw.example", 161, key.id, null, "", 60, false));
        transfer.number(
                "insert into purchase (customer_id, serial, site_id, device_id, price, currency, bought_on, note)"
                        + " values (" + customer.id + ", '-0017', " + site.id + ", " + device.id
                        + ", 189.90, 'EUR', '2026-03-31', '=sum') returning id");
    }

    private static SiteDraft oddSite() {
        return new SiteDraft(
                "+Pier; 1",
                "Europe/Berlin",
                "@1 Quay",
                "00123",
                "Saltmarsh",
                "DE",
                ODD,
                2_500,
                null,
                List.of(
                        new ServiceHours(1, LocalTime.of(8, 0), LocalTime.of(12, 0)),
                        new ServiceHours(1, LocalTime.of(13, 0), LocalTime.MIDNIGHT),
                        new ServiceHours(2, LocalTime.of(8, 0), LocalTime.of(12, 0))),
                List.of(
                        new SiteContact("Zed | a\\b", "", "+1-555-0101", ""),
                        new SiteContact("=Ann", "duty", "", "ann@saltmarsh.example")));
    }

    @Test
    void whatIsExportedAndImportedAgainChangesNothing() {
        List<String> files = new ArrayList<>();
        for (TransferTable table : TransferTable.values()) {
            files.add(transfer.export(table, customer.id));
        }
        ImportRun run = transfer.check(account, files.toArray(String[]::new));
        assertThat(transfer.rows(account, run.id(), null)).allSatisfy(row -> {
            assertThat(row.faults()).as(row.name()).isEmpty();
            assertThat(row.changes()).as(row.name()).isEmpty();
        });
        assertThat(run.count(ImportOutcome.SAME)).isEqualTo(6);
    }

    /** The whole database of all tests, whatever they left in it. */
    @Test
    void theWholeFleetComesBackUnchanged() {
        List<String> files = new ArrayList<>();
        for (TransferTable table : TransferTable.values()) {
            files.add(transfer.export(table, null));
        }
        ImportRun run = transfer.check(account, files.toArray(String[]::new));
        assertThat(run.count(ImportOutcome.SAME)).isEqualTo(run.rows()).isGreaterThan(4);
    }

    /** An outside reader: PostgreSQL's COPY in CSV format (PostgreSQL manual, COPY) reads the same fields. */
    @ParameterizedTest
    @EnumSource(TransferTable.class)
    void postgresqlReadsTheSameFields(TransferTable table) throws Exception {
        String columns = table.columns().stream()
                .map(column -> "\"" + column.name() + "\" text")
                .collect(Collectors.joining(", "));
        String text = transfer.export(table, customer.id);
        try (var connection = database.getConnection();
                var statement = connection.createStatement()) {
            statement.execute("drop table if exists judge");
            statement.execute("create temp table judge (" + columns + ")");
            connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn(
                            "copy judge from stdin (format csv, header match, encoding 'UTF8')",
                            new ByteArrayInputStream(text.getBytes(UTF_8)));
            var rows = statement.executeQuery(
                    "select * from judge order by " + (table == TransferTable.DEVICES ? "device" : "1"));
            assertThat(rows.next()).isTrue();
            if (table != TransferTable.MODELS) {
                assertThat(rows.getString("customer")).isEqualTo("'" + customer.name);
            }
            judge(table, rows);
            statement.execute("drop table judge");
        }
    }

    private static void judge(TransferTable table, ResultSet rows) throws SQLException {
        switch (table) {
            case CUSTOMERS -> assertThat(rows.getString("note")).isEqualTo("'" + ODD);
            case SITES -> {
                assertThat(rows.getString("site")).isEqualTo("'+Pier; 1");
                assertThat(rows.getString("getting_in")).isEqualTo("'" + ODD);
                assertThat(rows.getString("postcode")).isEqualTo("00123");
                assertThat(rows.getString("uplink_down_mbit")).isEqualTo("2.5");
            }
            case MODELS -> {
                assertThat(rows.getString("maker")).isEqualTo("Tamarack Radio");
                assertThat(rows.getString("model")).isEqualTo("TR-22 invented");
                assertThat(rows.getString("outdoor")).isEqualTo("no");
            }
            case DEVICES -> {
                assertThat(rows.getString("device")).isEqualTo("''=AP");
                assertThat(rows.getString("host")).isEqualTo("2001:db8::1");
                assertThat(rows.getString("credentials")).isEqualTo("'@keys");
                assertThat(rows.getString("model")).isEqualTo("TR-22 invented");
            }
            case PURCHASES -> {
                assertThat(rows.getString("serial")).isEqualTo("'-0017");
                assertThat(rows.getString("price")).isEqualTo("189.90");
                assertThat(rows.getString("bought_on")).isEqualTo("2026-03-31");
            }
        }
    }

    @Test
    void secretsAreNeverExported() {
        for (TransferTable table : TransferTable.values()) {
            assertThat(transfer.export(table, customer.id)).doesNotContain("quayside-secret");
        }
    }

    @Test
    void anotherCustomersDataStaysOutsideOfAScope() throws Exception {
        CustomerScope other = CustomerScope.of(customer.id + 1_000_000);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (TransferTable table : TransferTable.values()) {
            exports.write(other, Optional.empty(), table, false, out);
        }
        assertThat(out.toString(UTF_8).lines()).hasSize(TransferTable.values().length);
        assertThatThrownBy(() -> exports.write(other, Optional.of(customer.id), TransferTable.SITES, false, out))
                .isInstanceOf(InputRejected.class);
    }

    @ParameterizedTest
    @EnumSource(TransferTable.class)
    void aTemplateIsReadAsItsTable(TransferTable table) {
        String template = exports.template(table, true);
        assertThat(template).startsWith("\uFEFF").containsIgnoringCase("invented");
        ImportRun run = transfer.check(account, template);
        assertThat(run.files().get(0).table()).isEqualTo(table);
        assertThat(run.rows()).isEqualTo(1);
    }
}
