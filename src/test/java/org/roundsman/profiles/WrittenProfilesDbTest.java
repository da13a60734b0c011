package org.roundsman.profiles;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.profiles.ProfileCases.Difference;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkReading;
import org.roundsman.snmp.WalkText;
import org.roundsman.web.FleetFixture;

/** Profiles written here, their versions and test cases, with an invented device that no shipped profile knows. */
@QuarkusTest
class WrittenProfilesDbTest {

    /** Two radios under the enterprise number set aside for documentation (RFC 5612). */
    static final String WALK = """
        .1.3.6.1.2.1.1.1.0 = STRING: "Invented access point"
        .1.3.6.1.2.1.1.2.0 = OID: .1.3.6.1.4.1.32473.77.1
        .1.3.6.1.2.1.1.3.0 = Timeticks: (360000) 1:00:00.00
        .1.3.6.1.2.1.1.4.0 = STRING: "it@pebblegate.example"
        .1.3.6.1.2.1.1.5.0 = STRING: "loft-ap"
        .1.3.6.1.2.1.1.6.0 = STRING: "Loft"
        .1.3.6.1.4.1.32473.77.2.1.0 = STRING: "GX-0042"
        .1.3.6.1.4.1.32473.77.2.2.0 = Gauge32: 37
        .1.3.6.1.4.1.32473.77.5.1.2.1 = STRING: "2.4 GHz"
        .1.3.6.1.4.1.32473.77.5.1.2.2 = STRING: "5 GHz"
        .1.3.6.1.4.1.32473.77.5.1.3.1 = Gauge32: 51
        .1.3.6.1.4.1.32473.77.5.1.3.2 = Gauge32: 102
        .1.3.6.1.4.1.32473.77.5.1.4.1 = Gauge32: 11
        .1.3.6.1.4.1.32473.77.5.1.4.2 = Gauge32: 4
        """;

    @Inject
    WrittenProfiles written;

    @Inject
    ProfileUse use;

    @Inject
    ProfilesInUse inUse;

    @Inject
    StoredWalks walks;

    @Inject
    Workbench bench;

    @Inject
    ProfileCases cases;

    @Inject
    FleetFixture fixture;

    @Inject
    DataSource database;

    private String name;

    @BeforeEach
    void aNameOfItsOwn() {
        name = "maker-" + System.nanoTime();
    }

    @AfterEach
    void nothingStaysInUse() {
        written.all().forEach(profile -> written.takeOut(profile.id()));
        walks.all(CustomerScope.everyone()).forEach(walks::remove);
    }

    private String text(String column) {
        return "profile: " + name + "\nselect: {object-id: 1.3.6.1.4.1.32473.77, kind: access point}\ntables:\n"
                + "  - entry: 1.3.6.1.4.1.32473.77.5.1\n    index: [radio]\n    columns:\n      " + column + "\n";
    }

    private StoredWalk walk(Optional<Long> customer, boolean blank) {
        Walk walk = WalkText.read(WALK).walk();
        return walks.add(new WalkDraft(
                "Loft", customer, Optional.empty(), blank, walk, Instant.parse("2026-03-04T12:00:00Z"), List.of()));
    }

    @Test
    void versionsArePutInUseRolledBackAndTakenOut() {
        ProfileVersion first = written.add(text("radio.utilisation: {column: 3, as: bss-load}"), "first try");
        assertThat(inUse.current().names()).doesNotContain(name);
        use.use(first.profileId(), 1, false);
        assertThat(inUse.current().names()).contains(name);
        written.save(first.profileId(), 1, text("radio.clients: 4"), "clients");
        use.use(first.profileId(), 2, false);
        assertThat(written.find(first.profileId()).orElseThrow().inUse()).contains(2);
        use.use(first.profileId(), 1, false);
        assertThat(inUse.current().text(name).orElseThrow().text()).contains("bss-load");
        written.takeOut(first.profileId());
        assertThat(inUse.current().names()).doesNotContain(name);
        assertThat(written.versions(first.profileId()))
                .extracting(ProfileVersion::number)
                .containsExactly(2, 1);
        assertThat(audited(first.profileId()))
                .containsExactly("added", "put in use", "changed", "put in use", "rolled back", "taken out of use");
    }

    private List<String> audited(long id) {
        List<String> actions = new ArrayList<>();
        try (Connection connection = database.getConnection();
                ResultSet row = connection
                        .createStatement()
                        .executeQuery("select action from audit_entry where subject = 'profile' and subject_id = " + id
                                + " order by id")) {
            while (row.next()) {
                actions.add(row.getString(1));
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return actions;
    }

    @Test
    void aBrokenProfileIsKeptAndNeverUsed() {
        ProfileVersion broken = written.add(text("radio.cleints: 4"), "");
        assertThat(broken.faults()).singleElement().satisfies(f -> {
            assertThat(f.line()).isEqualTo(7);
            assertThat(f.text()).contains("did you mean radio.clients?");
        });
        assertThatThrownBy(() -> use.use(broken.profileId(), 1, true)).isInstanceOf(InputRejected.class);
        assertThat(inUse.current().names()).doesNotContain(name);
        assertThatThrownBy(() -> written.add("about: nameless\n", "")).isInstanceOf(InputRejected.class);
        assertThatThrownBy(() -> written.add(text("radio.clients: 4"), ""))
                .as("there is one of this name")
                .isInstanceOf(InputRejected.class);
    }

    @Test
    void ofTwoWhoSaveOnTheSameVersionTheSecondIsTold() throws Exception {
        long id = written.add(text("radio.clients: 4"), "").profileId();
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<ProfileVersion>> saves = two.invokeAll(List.<Callable<ProfileVersion>>of(
                    () -> written.save(id, 1, text("radio.clients: 3"), "mine"),
                    () -> written.save(id, 1, text("radio.channel: 3"), "theirs")));
            int refused = 0;
            for (Future<ProfileVersion> save : saves) {
                try {
                    save.get();
                } catch (java.util.concurrent.ExecutionException e) {
                    assertThat(((InputRejected) e.getCause()).faults()).containsOnlyKeys("basedOn");
                    refused++;
                }
            }
            assertThat(refused).isEqualTo(1);
            assertThat(written.versions(id)).hasSize(2);
        } finally {
            two.shutdown();
        }
    }

    @Test
    void theWalkShowsWhatIsMeasuredWhatIsMissingAndWhatNobodyReads() {
        StoredWalk stored = walk(Optional.empty(), true);
        WalkReading bare = bench.read(stored);
        assertThat(bare.visit().profiles()).containsExactly("host");
        assertThat(bare.unused())
                .extracting(UnusedGroup::oid)
                .contains("1.3.6.1.4.1.32473.77.5.1", "1.3.6.1.4.1.32473.77.2");
        assertThat(bare.given()).noneMatch(line -> line.value().contains("loft-ap"));
        WalkReading tried = bench.read(stored, bench.with(text("radio.utilisation: {column: 3, as: bss-load}")));
        // 51 and 102 of 255 are 20 % and 40 %: the BSS Load element of IEEE 802.11, from 0 to 255.
        assertThat(ProfileCases.results(tried))
                .contains(
                        new ProfileCases.Result("radio 1", "radio.utilisation", "20"),
                        new ProfileCases.Result("radio 2", "radio.utilisation", "40"));
        assertThat(inUse.current().names()).as("trying puts nothing in use").doesNotContain(name);
    }

    @Test
    void aTestCaseSaysWhatAChangeWouldChange() {
        StoredWalk stored = walk(Optional.empty(), false);
        long id = written.add(text("radio.clients: 4"), "").profileId();
        use.use(id, 1, false);
        cases.keep(stored);
        written.save(id, 1, text("radio.clients: 3"), "");
        Consequences consequences = use.consequences(id, 2);
        assertThat(consequences.cases()).singleElement().satisfies(outcome -> assertThat(outcome.differences())
                .contains(
                        new Difference("radio 1", "radio.clients", "11", "51"),
                        new Difference("device", "device.clients", "15", "153")));
        assertThatThrownBy(() -> use.use(id, 2, false))
                .isInstanceOfSatisfying(
                        InputRejected.class, e -> assertThat(e.faults()).containsKey("accept"));
        use.use(id, 2, true);
        StoredWalk after = walks.find(CustomerScope.everyone(), stored.id()).orElseThrow();
        assertThat(cases.now(after, bench.read(after)).same())
                .as("accepted results are expected now")
                .isTrue();
    }

    @Test
    void consequencesNameTheDevicesByTheirSysObjectId() throws SQLException {
        FleetFixture.Place place = fixture.place("Pebblegate");
        try (Connection connection = database.getConnection()) {
            connection
                    .createStatement()
                    .execute("insert into device_fact values (" + place.deviceId()
                            + ", 'OBJECT_ID', '1.3.6.1.4.1.32473.77.1', now())");
        }
        long id = written.add(text("radio.clients: 4"), "").profileId();
        Consequences consequences = use.consequences(id, 1);
        assertThat(consequences.devices())
                .filteredOn(Consequences.AffectedDevice::certain)
                .extracting(Consequences.AffectedDevice::id)
                .containsExactly(place.deviceId());
        use.use(id, 1, false);
        assertThat(use.consequences(id, 1).deviceCount())
                .as("it is in use already")
                .isZero();
    }

    @Test
    void walksStayInTheScopeOfTheirCustomer() {
        FleetFixture.Place own = fixture.place("Quillfeather");
        FleetFixture.Place other = fixture.place("Brackwater");
        StoredWalk theirs = walk(Optional.of(own.customerId()), false);
        StoredWalk nobodys = walk(Optional.empty(), false);
        assertThat(walks.find(CustomerScope.of(own.customerId()), theirs.id())).isPresent();
        assertThat(walks.find(CustomerScope.of(other.customerId()), theirs.id()))
                .isEmpty();
        assertThat(walks.find(CustomerScope.of(other.customerId()), nobodys.id()))
                .isEmpty();
        assertThat(walks.all(CustomerScope.of(other.customerId()))).isEmpty();
    }

    @Test
    void linesForATableMakeAProfileWithoutFault() {
        StoredWalk stored = walk(Optional.empty(), true);
        UnusedGroup table = bench.group(stored, "1.3.6.1.4.1.32473.77.5.1").orElseThrow();
        assertThat(table.columns()).extracting(UnusedGroup.Column::number).containsExactly(2, 3, 4);
        String lines = Proposal.table(
                table,
                List.of("radio"),
                java.util.Map.of(
                        2, new Proposal.Meaning("radio.label", ""),
                        3, new Proposal.Meaning("radio.utilisation", "bss-load")));
        String whole = Proposal.insert(Proposal.skeleton(name, stored.objectId(), "access point"), "tables", lines);
        assertThat(WrittenProfiles.check(whole)).isEmpty();
        String scalars = Proposal.scalars(
                bench.group(stored, "1.3.6.1.4.1.32473.77.2").orElseThrow(),
                java.util.Map.of(1, new Proposal.Meaning("fact.serial", "")));
        String both = Proposal.insert(whole, "scalars", scalars);
        assertThat(WrittenProfiles.check(both)).isEmpty();
        assertThat(ProfileCases.results(bench.read(stored, bench.with(both))))
                .contains(
                        new ProfileCases.Result("device", "fact.serial", "GX-0042"),
                        new ProfileCases.Result("radio 2", "radio.label", "5 GHz"),
                        new ProfileCases.Result("radio 2", "radio.utilisation", "40"));
    }
}
