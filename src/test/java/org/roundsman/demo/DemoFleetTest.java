package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.DeviceKind;

/** Numbers and names as the project's design (section 9) and the first demands on the demo fleet ask for. */
class DemoFleetTest {

    private final DemoFleet fleet = DemoFleet.of(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED);

    @Test
    void hasTheSixNamedCustomersWithTheirSites() {
        assertThat(fleet.customers())
                .extracting(DemoCustomer::name)
                .startsWith(
                        "Pebblegate Dental",
                        "Orrin & Vale Booksellers",
                        "Saltmarsh Ferry Line",
                        "Quillfeather School",
                        "Hotel Brackwater",
                        "Thistledown Timber");
        assertThat(fleet.customers().subList(0, 6))
                .extracting(c -> c.sites().size())
                .containsExactly(3, 5, 4, 2, 1, 2);
        assertThat(fleet.customers().get(4).sites().get(0).devices())
                .filteredOn(DemoDevice::isAccessPoint)
                .hasSize(40);
    }

    @ParameterizedTest
    @ValueSource(ints = {250, 251, 260, 1000, 20_000})
    void hasTheSizeAskedForAndEnoughOfTheRest(int size) {
        DemoFleet some = DemoFleet.of(size, 7);
        assertThat(some.devices()).filteredOn(DemoDevice::isAccessPoint).hasSize(size);
        assertThat(some.devices())
                .filteredOn(d -> d.kind() == DeviceKind.NETWORK_SWITCH)
                .hasSizeGreaterThanOrEqualTo(20);
        assertThat(some.devices())
                .filteredOn(d -> d.kind() == DeviceKind.GATEWAY)
                .hasSizeGreaterThanOrEqualTo(12);
        assertThat(some.sites()).hasSizeGreaterThanOrEqualTo(20);
        assertThat(some.devices()).extracting(DemoDevice::host).doesNotHaveDuplicates();
        assertThat(some.devices()).extracting(DemoDevice::mac).doesNotHaveDuplicates();
        assertThat(some.customers())
                .extracting(c -> c.name().toLowerCase(Locale.ROOT))
                .doesNotHaveDuplicates();
        some.sites()
                .forEach(site ->
                        assertThat(site.devices()).extracting(DemoDevice::name).doesNotHaveDuplicates());
        some.customers()
                .forEach(c -> assertThat(c.sites()).extracting(DemoSite::name).doesNotHaveDuplicates());
    }

    @Test
    void isTheSameEachTimeAndAnotherForAnotherSeed() {
        assertThat(DemoFleet.of(300, 5)).isEqualTo(DemoFleet.of(300, 5));
        assertThat(DemoFleet.of(300, 5)).isNotEqualTo(DemoFleet.of(300, 6));
    }

    @Test
    void numbersAreThePlacesInTheLists() {
        assertThat(fleet.devices())
                .allSatisfy(d -> assertThat(fleet.devices().get(d.number())).isSameAs(d));
        assertThat(fleet.sites())
                .allSatisfy(s -> assertThat(fleet.sites().get(s.number())).isSameAs(s));
        assertThat(fleet.sites())
                .allSatisfy(s -> assertThat(fleet.customerOf(s).sites()).contains(s));
        assertThat(fleet.devices())
                .allSatisfy(d -> assertThat(fleet.siteOf(d).devices()).contains(d));
    }

    /** RFC 2606 keeps .example, RFC 7042 keeps 00-00-5E-00-53; bit 1 of the first octet marks local addresses. */
    @Test
    void nothingInItCanExist() {
        assertThat(fleet.customers()).extracting(DemoCustomer::note).containsOnly("Invented for demonstration");
        assertThat(fleet.devices()).allSatisfy(device -> {
            assertThat(device.fullName()).endsWith(".example");
            assertThat(device.host()).startsWith("127.");
            boolean documentation = device.mac() >> 8 == 0x00005E0053L;
            boolean local = (device.mac() >> 40 & 0x02) != 0 && (device.mac() >> 40 & 0x01) == 0;
            assertThat(documentation || local).isTrue();
        });
        assertThat(fleet.sites().stream().flatMap(s -> s.contacts().stream())).allSatisfy(contact -> {
            assertThat(contact.email()).endsWith(".example");
            // 555-0100 to 555-0199 are kept for fiction in North America (from memory)
            assertThat(contact.phone()).matches("\\+1-555-01\\d\\d");
        });
    }

    @Test
    void liesInSeveralTimeZonesAndSpeaksBothVersions() {
        assertThat(fleet.sites().stream().map(s -> s.zone().getId()).distinct())
                .contains("Europe/London", "Europe/Berlin", "America/New_York", "America/Chicago");
        assertThat(fleet.devices())
                .filteredOn(d -> d.credential() instanceof DemoCredential.User)
                .isNotEmpty();
        assertThat(fleet.devices())
                .filteredOn(d -> d.credential() instanceof DemoCredential.Community)
                .hasSizeGreaterThan(fleet.devices().size() / 2);
    }

    @Test
    void everyFaultThatStaysIsSomewhere() {
        List<Fault> standing = fleet.devices().stream()
                .flatMap(d -> d.standing().stream())
                .distinct()
                .toList();
        assertThat(standing)
                .contains(
                        Fault.ROOM_SATURATED,
                        Fault.FLAPPING,
                        Fault.FIRMWARE_STALE,
                        Fault.CREDENTIAL_WRONG,
                        Fault.RADIO_OFF,
                        Fault.CLOCK_1970,
                        Fault.PORT_SLOW);
        assertThat(fleet.devices())
                .filteredOn(d -> !d.credential().equals(d.accepts()))
                .singleElement()
                .satisfies(d -> assertThat(d.standing()).contains(Fault.CREDENTIAL_WRONG));
    }

    @Test
    void credentialsOfACustomerHaveNamesOfTheirOwn() {
        fleet.customers().forEach(customer -> assertThat(customer.credentials())
                .extracting(DemoCredential::name)
                .doesNotHaveDuplicates());
        assertThat(fleet.customers().stream()
                        .flatMap(c -> c.credentials().stream())
                        .flatMap(DemoFleetTest::passwords))
                // RFC 3414, 11.2: at least 8 characters (from memory)
                .allSatisfy(password -> assertThat(password).hasSizeGreaterThanOrEqualTo(8));
    }

    private static Stream<String> passwords(DemoCredential credential) {
        return credential instanceof DemoCredential.User user
                ? Stream.of(user.authPassword(), user.privPassword())
                : Stream.of();
    }

    @Test
    void aSizeOutOfRangeIsRefusedInWords() {
        assertThatThrownBy(() -> DemoFleet.of(249, 1))
                .hasMessageContaining("between 250 and 20000")
                .hasMessageContaining("249");
        assertThatThrownBy(() -> DemoFleet.of(20_001, 1)).hasMessageContaining("20001");
        assertThatThrownBy(() -> DemoFleet.of(250, 1, 65_536)).hasMessageContaining("65536");
    }
}
