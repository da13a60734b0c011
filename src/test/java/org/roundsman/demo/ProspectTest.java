package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** The customer on whom onboarding is tried: agents, example files and guide say the same. */
class ProspectTest {

    private static final String OWN = "1.3.6.1.4.1.32473.9.2.";
    private static final String SYS_OBJECT_ID = "1.3.6.1.2.1.1.2.0";
    private static final Path EXAMPLES = Path.of("docs/examples");

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.prospect(26_169);

    @Test
    void everyAgentAnswersTheCredentialThatTheGuideNames() throws IOException {
        String guide = java.nio.file.Files.readString(Path.of("docs/users-guide.md"));
        try (AgentHost host = AgentHost.start(fleet, Faults.byHandOnly(fleet, clock), clock)) {
            for (DemoDevice device : fleet.devices()) {
                NetSnmp.Said said = NetSnmp.ask("snmpget", device, SYS_OBJECT_ID);
                assertThat(said.value(SYS_OBJECT_ID))
                        .isEqualTo("." + device.model().objectId());
                for (String secret : secrets(device.accepts())) {
                    assertThat(guide).contains("`" + secret + "`");
                }
            }
            assertThat(host.answers()).isGreaterThanOrEqualTo(fleet.devices().size());
        }
        for (DemoSite site : fleet.sites()) {
            String first = site.devices().get(0).host();
            assertThat(guide).contains(first + "-" + first.substring(0, first.lastIndexOf('.')) + ".20");
            assertThat(site.devices()).allSatisfy(device -> assertThat(Integer.parseInt(
                            device.host().substring(device.host().lastIndexOf('.') + 1)))
                    .isBetween(1, 20));
        }
    }

    private static List<String> secrets(DemoCredential credential) {
        return credential instanceof DemoCredential.User user
                ? List.of(user.userName(), user.authPassword(), user.privPassword())
                : List.of(((DemoCredential.Community) credential).community());
    }

    @Test
    void sharesNothingWithTheFleetThatIsEntered() {
        DemoFleet entered = DemoFleet.of(DemoFleet.LARGEST, DemoFleet.USUAL_SEED);
        Set<Object> taken = new HashSet<>();
        entered.devices().forEach(device -> {
            taken.add(device.host());
            taken.add(device.mac());
            taken.add(device.serial());
        });
        entered.customers().forEach(customer -> taken.add(customer.name()));
        fleet.devices()
                .forEach(device -> assertThat(taken).doesNotContain(device.host(), device.mac(), device.serial()));
        assertThat(taken).doesNotContain(fleet.customers().get(0).name());
        assertThat(fleet.devices()).hasSizeBetween(12, 20);
        assertThat(fleet.accessPoints()).isEqualTo((int)
                fleet.devices().stream().filter(DemoDevice::isAccessPoint).count());
    }

    @Test
    void theExampleFilesNameItsSites() throws IOException {
        DemoCustomer customer = fleet.customers().get(0);
        assertThat(rows("customers.csv")).singleElement().satisfies(row -> {
            assertThat(row.get("customer")).isEqualTo(customer.name());
            assertThat(row.get("note")).startsWith(DemoFleet.NOTE);
        });
        List<CSVRecord> rows = rows("sites.csv");
        assertThat(rows).hasSameSizeAs(customer.sites());
        for (int i = 0; i < rows.size(); i++) {
            DemoSite site = customer.sites().get(i);
            CSVRecord row = rows.get(i);
            assertThat(row.get("customer")).isEqualTo(customer.name());
            assertThat(row.get("site")).isEqualTo(site.name());
            assertThat(row.get("time_zone")).isEqualTo(site.zone().getId());
            assertThat(row.get("street")).isEqualTo(site.street());
            assertThat(row.get("postcode")).isEqualTo(site.postcode());
            assertThat(row.get("town")).isEqualTo(site.town());
            assertThat(row.get("country")).isEqualTo(site.country());
            assertThat(Integer.parseInt(row.get("uplink_down_mbit")) * 1000).isEqualTo(site.uplinkDownKbit());
            assertThat(Integer.parseInt(row.get("uplink_up_mbit")) * 1000).isEqualTo(site.uplinkUpKbit());
            assertThat(row.get("contacts").lines()).hasSameSizeAs(site.contacts());
            site.contacts().forEach(contact -> assertThat(row.get("contacts"))
                    .contains(contact.name() + " | " + contact.duty() + " | " + contact.phone() + " | "
                            + contact.email()));
        }
    }

    private static List<CSVRecord> rows(String file) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(EXAMPLES.resolve(file), StandardCharsets.UTF_8, format)) {
            return parser.getRecords();
        }
    }

    /** Units of its own, as its table in the guide says. */
    @Test
    void theUnknownMakersUnitHasClientsAndUtilisationInAnOddPlace() {
        Faults faults = Faults.byHandOnly(fleet, clock);
        DemoDevice device = fleet.devices().stream()
                .filter(d -> d.model() == DemoModel.GI_7)
                .findFirst()
                .orElseThrow();
        try (AgentHost host = AgentHost.start(fleet, faults, clock)) {
            NetSnmp.Said said = NetSnmp.ask("snmpbulkwalk", device, "1.3.6.1.4.1.32473");
            assertThat(said.values().keySet()).allMatch(name -> name.startsWith(OWN));
            assertThat(said.value(OWN + "1.1.0")).isEqualTo(device.serial());
            assertThat(said.number(OWN + "2.1.2.1")).isEqualTo(2400);
            assertThat(said.number(OWN + "2.1.2.2")).isEqualTo(5000);
            assertThat(said.number(OWN + "2.1.5.1")).isBetween(1L, 1000L);
            long clients = said.number(OWN + "2.1.4.1");
            assertThat(said.number(OWN + "3.1.2.1.1") + said.number(OWN + "3.1.2.1.2"))
                    .isEqualTo(clients);
            assertThat(said.value("1.3.6.1.4.1.32473.9.2.1.2.0")).isEqualTo("2.0.4");
            assertThat(NetSnmp.ask("snmpbulkwalk", device, "1.0.8802").output()).contains("No Such Object");
        }
        assertThat(faults.cabling().up(device).orElseThrow().feed()).isEqualTo(PowerFeed.INJECTOR);
    }

    @Test
    void nothingGoesWrongThereByItself() {
        Faults faults = Faults.byHandOnly(fleet, clock);
        for (int day = 0; day < 60; day++) {
            long at = clock.millis() + day * 86_400_000L;
            assertThat(fleet.devices())
                    .allSatisfy(device -> assertThat(faults.of(device, at)).isEmpty());
        }
    }
}
