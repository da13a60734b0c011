package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.model.Outlook;

/** The agents as net-snmp's tools see them: an SNMP implementation that nobody here wrote is the reference. */
class AgentsAgainstNetSnmpTest {

    private static final String SYS_NAME = "1.3.6.1.2.1.1.5.0";
    private static final String OWN = "1.3.6.1.4.1.32473.2";
    private static final SetClock CLOCK = new SetClock("2026-11-25T10:02:30Z");
    private static DemoFleet fleet;
    private static Faults faults;
    private static AgentHost host;

    @BeforeAll
    static void start() {
        fleet = DemoFleet.of(260, 11, 26_161);
        faults = new Faults(fleet, CLOCK);
        host = AgentHost.start(fleet, faults, CLOCK);
    }

    @AfterAll
    static void stop() {
        host.close();
    }

    private static DemoDevice first(boolean versionThree, DemoModel model) {
        return fleet.devices().stream()
                .filter(d -> d.model() == model && d.standing().isEmpty() && !silent(d))
                .filter(d -> d.accepts() instanceof DemoCredential.User == versionThree)
                .findFirst()
                .orElseThrow();
    }

    private static boolean silent(DemoDevice device) {
        Outlook outlook = new Outlook();
        faults.look(device, CLOCK.millis(), outlook);
        return outlook.silent;
    }

    @Test
    void allOfMoreThan300AgentsInOneProcessSayTheirNames() throws Exception {
        assertThat(fleet.devices()).hasSizeGreaterThan(300);
        ExecutorService askers = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Void>> asks = new ArrayList<>();
            for (DemoDevice device : fleet.devices()) {
                asks.add(() -> {
                    if (!silent(device)) {
                        assertThat(NetSnmp.ask("snmpget", device, SYS_NAME).value(SYS_NAME))
                                .isEqualTo(device.fullName());
                    }
                    return null;
                });
            }
            for (Future<Void> asked : askers.invokeAll(asks)) {
                asked.get();
            }
        } finally {
            askers.shutdown();
        }
        assertThat(fleet.devices()).filteredOn(AgentsAgainstNetSnmpTest::silent).hasSizeBetween(1, 60);
    }

    @Test
    void getNextGetBulkAndVersionThreeShowTheSameTree() {
        DemoDevice device = first(false, DemoModel.TR_22);
        Map<String, String> next = NetSnmp.ask("snmpwalk", device, ".1").values();
        assertThat(next).hasSizeGreaterThan(120);
        assertThat(NetSnmp.ask("snmpbulkwalk", device, ".1").values()).isEqualTo(next);
        assertThat(NetSnmp.ask("snmpgetnext", device, ".1.3.6.1.2.1.1").values())
                .containsKey("1.3.6.1.2.1.1.1.0");
        DemoDevice secure = first(true, DemoModel.TR_22);
        Map<String, String> signed = NetSnmp.ask("snmpbulkwalk", secure, ".1").values();
        assertThat(signed.keySet()).isEqualTo(next.keySet());
        assertThat(NetSnmp.ask("snmpwalk", secure, ".1").values()).isEqualTo(signed);
    }

    @Test
    void namesComeInOrderWithoutRepeats() {
        for (DemoModel model : DemoModel.catalogue()) {
            DemoDevice device = fleet.devices().stream()
                    .filter(d -> d.model() == model && !silent(d) && d.accepts() instanceof DemoCredential.Community)
                    .findFirst()
                    .orElseThrow();
            List<int[]> names = NetSnmp.ask("snmpbulkwalk", device, ".1").values().keySet().stream()
                    .map(AgentsAgainstNetSnmpTest::numbers)
                    .toList();
            assertThat(names).isNotEmpty().isSortedAccordingTo(Comparator.comparing(n -> n, java.util.Arrays::compare));
        }
    }

    private static int[] numbers(String dotted) {
        return java.util.Arrays.stream(dotted.split("\\."))
                .mapToInt(Integer::parseInt)
                .toArray();
    }

    @Test
    void versionOneHasTheSameTreeWithoutCounter64() {
        DemoDevice device = first(false, DemoModel.TR_22);
        DemoCredential.Community own = (DemoCredential.Community) device.accepts();
        DemoCredential old = new DemoCredential.Community("v1", 1, own.community());
        Map<String, String> two = NetSnmp.ask("snmpwalk", device, ".1").values();
        two.values().removeIf(value -> value.startsWith("Counter64"));
        assertThat(NetSnmp.ask("snmpwalk", device, old, ".1").values()).isEqualTo(two);
        assertThat(NetSnmp.ask("snmpget", device, old, SYS_NAME, "1.3.6.1.2.1.31.1.1.1.6.1")
                        .output())
                .contains("noSuchName")
                .contains("1.3.6.1.2.1.31.1.1.1.6.1");
    }

    /** Types and places by the contract for the invented maker's objects. */
    @Test
    void theMakersObjectsAreWhereTheContractSays() {
        DemoDevice device = first(false, DemoModel.TR_22);
        NetSnmp.Said said = NetSnmp.ask("snmpbulkwalk", device, OWN);
        assertThat(said.value(OWN + ".1.1.0")).isEqualTo(device.serial());
        assertThat(said.value(OWN + ".1.2.0")).isEqualTo("TR-22");
        assertThat(said.value(OWN + ".1.3.0")).isEqualTo("6.4.2");
        assertThat(said.value(OWN + ".1.5.0").replace(" ", "")).isEqualTo(String.format("%012X", device.mac()));
        assertThat(said.values().get(OWN + ".2.1.0")).startsWith("Gauge32: ");
        assertThat(said.values().get(OWN + ".2.2.0")).startsWith("Gauge32: ");
        // 2026-11-25 10:02:30.0 UTC as DateAndTime of RFC 2579
        assertThat(said.value(OWN + ".2.3.0")).isEqualTo("07 EA 0B 19 0A 02 1E 00 2B 00 00");
        assertThat(said.number(OWN + ".2.4.0")).isEqualTo(1);
        for (DemoRadio radio : device.radios()) {
            String row = "." + radio.number();
            String column = OWN + ".3.1.1.";
            assertThat(said.value(column + 1 + row)).isEqualTo(radio.label());
            assertThat(said.value(column + 2 + row).replace(" ", "")).isEqualTo(String.format("%012X", radio.mac()));
            assertThat(said.number(column + 3 + row)).isEqualTo(radio.band().code());
            assertThat(said.number(column + 4 + row)).isEqualTo(radio.channel());
            assertThat(said.number(column + 5 + row)).isEqualTo(radio.width());
            assertThat(said.number(column + 6 + row)).isEqualTo(radio.powerTenths());
            assertThat(said.number(column + 7 + row)).isBetween(-105L, -80L);
            assertThat(said.number(column + 9 + row)).isBetween(0L, 255L);
            assertThat(said.values().get(column + 10 + row)).startsWith("Counter32: ");
            assertThat(said.number(column + 11 + row)).isLessThan(said.number(column + 10 + row));
            assertThat(said.number(column + 12 + row)).isEqualTo(1);
            String network = OWN + ".4.1.1.";
            assertThat(said.number(network + 2 + row + ".1") + said.number(network + 2 + row + ".2"))
                    .isEqualTo(said.number(column + 8 + row));
            List<DemoNetwork> networks = fleet.siteOf(device).networks();
            assertThat(said.value(network + 1 + row + ".2"))
                    .isEqualTo(networks.get(1).ssid());
        }
    }

    /** RFC 3416, 4.2.1: an unknown object, and a known one without that instance. */
    @Test
    void whatIsNotThereIsAnException() {
        DemoDevice device = first(false, DemoModel.TR_22);
        Map<String, String> said = NetSnmp.ask(
                        "snmpget", device, "1.3.6.1.2.1.1.99.0", "1.3.6.1.2.1.2.2.1.2.77", SYS_NAME)
                .values();
        assertThat(said.get("1.3.6.1.2.1.1.99.0")).startsWith("No Such Object");
        assertThat(said.get("1.3.6.1.2.1.2.2.1.2.77")).startsWith("No Such Instance");
        assertThat(said.get(SYS_NAME)).contains(device.fullName());
        assertThat(NetSnmp.ask("snmpgetnext", device, "1.3.6.1.6.3.99").output())
                .contains("No more variables left");
    }

    @Test
    void aReplyThatWouldBeTooLargeIsRefusedAndABulkOneIsCut() {
        DemoDevice device = first(false, DemoModel.TS_24);
        List<String> many = new ArrayList<>();
        for (int port = 10_001; port <= 10_024; port++) {
            many.add("1.3.6.1.2.1.31.1.1.1.6." + port);
            many.add("1.3.6.1.2.1.31.1.1.1.10." + port);
            many.add("1.3.6.1.2.1.2.2.1.2." + port);
        }
        assertThat(NetSnmp.ask("snmpget", device, many.toArray(String[]::new)).output())
                .contains("tooBig");
        NetSnmp.Said bulk = NetSnmp.ask("snmpbulkget", device, "-Cr500", "1.3.6.1.2.1.2.2");
        assertThat(bulk.values()).hasSizeBetween(20, 120);
    }

    @Test
    void aWrongCommunityMeetsSilence() {
        DemoDevice device = first(false, DemoModel.TR_22);
        assertThat(NetSnmp.ask("snmpget", device, new DemoCredential.Community("", 2, "not-this"), SYS_NAME)
                        .output())
                .contains("Timeout");
    }

    @Test
    void versionThreeSaysWhatIsWrong() {
        DemoDevice device = first(true, DemoModel.TR_22);
        DemoCredential.User own = (DemoCredential.User) device.accepts();
        assertThat(refusal(device, own.userName(), "another-one", own.privPassword()))
                .contains("Authentication failure");
        assertThat(refusal(device, own.userName(), own.authPassword(), "another-one"))
                .contains("Decryption error");
        assertThat(refusal(device, "nobody", own.authPassword(), own.privPassword()))
                .contains("Unknown user name");
        List<String> unsigned = List.of("-v", "3", "-l", "noAuthNoPriv", "-u", own.userName());
        assertThat(NetSnmp.run("snmpget", device, unsigned, SYS_NAME).output()).contains("authorizationError");
        List<String> clear =
                List.of("-v", "3", "-l", "authNoPriv", "-u", own.userName(), "-a", "SHA-256", "-A", own.authPassword());
        assertThat(NetSnmp.run("snmpget", device, clear, SYS_NAME).output()).contains("authorizationError");
    }

    private static String refusal(DemoDevice device, String user, String auth, String priv) {
        DemoCredential wrong = new DemoCredential.User("", user, auth, priv);
        return NetSnmp.ask("snmpget", device, wrong, SYS_NAME).output();
    }

    @Test
    void nothingCanBeWritten() {
        DemoDevice device = first(false, DemoModel.TR_22);
        assertThat(NetSnmp.ask("snmpset", device, "1.3.6.1.2.1.1.6.0", "s", "elsewhere")
                        .output())
                .contains("notWritable");
    }
}
