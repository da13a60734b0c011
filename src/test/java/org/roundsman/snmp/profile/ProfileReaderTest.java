package org.roundsman.snmp.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.roundsman.snmp.ProfileException;

/** The format is our own: docs/profiles.md. */
class ProfileReaderTest {

    private static Profile read(String text) {
        return ProfileReader.read("maker.yaml", new StringReader(text));
    }

    @Test
    void readsAProfileOfAFewLines() {
        Profile profile = read("""
            profile: maker
            select: {object-id: 1.3.6.1.4.1.32473.9}
            tables:
              - entry: 1.3.6.1.4.1.32473.9.1.1
                index: [radio]
                columns:
                  radio.utilisation: {column: 4, as: bss-load}
            """);
        assertThat(profile.name()).isEqualTo("maker");
        Measure measure = profile.tables().get(0).measures().get(0);
        assertThat(measure.target().key()).isEqualTo("radio.utilisation");
        assertThat(measure.parts()).hasToString("[1.3.6.1.4.1.32473.9.1.1.4]");
        assertThat(measure.form()).isEqualTo(Form.BSS_LOAD);
        assertThat(measure.slow()).isFalse();
    }

    @Test
    void namesNotificationsAndTheirVariables() {
        Profile profile = read("""
            profile: maker
            notifications:
              - oid: 1.3.6.1.4.1.32473.9.0.1
                title: Fan fault
                show: {fan: 1.3.6.1.4.1.32473.9.2.1, speed: 1.3.6.1.4.1.32473.9.2.2}
              - {oid: 1.3.6.1.4.1.32473.9.0.2, title: Door opened}
            """);
        assertThat(profile.notifications()).extracting("title").containsExactly("Fan fault", "Door opened");
        assertThat(profile.notifications().get(0).shown()).extracting("name").containsExactly("fan", "speed");
    }

    static Stream<Arguments> brokenNotifications() {
        return Stream.of(
                broken(
                        "profile: m\nnotifications:\n  - {title: Fan fault}\n",
                        "maker.yaml line 3, notifications[1]: the key oid is missing"),
                broken(
                        "profile: m\nnotifications:\n  - {oid: 1.3.6.1.4.1.32473.0.1}\n",
                        "maker.yaml line 3, notifications[1]: the key title is missing"),
                broken(
                        "profile: m\nnotifications:\n  - {oid: fan, title: Fan fault}\n",
                        "line 3, notifications[1].oid: an object identifier in dotted numbers is wanted"),
                broken(
                        "profile: m\n"
                                + "notifications:\n"
                                + "  - {oid: 1.3.6.1.9, title: Fan}\n"
                                + "  - {oid: 1.3.6.1.9, title: Door}\n",
                        "line 4, notifications[2].oid: is named twice in this profile; keep one"),
                broken(
                        "profile: m\nnotifications:\n  - {oid: 1.3.6.1.9, title: Fan, shows: {a: 1.3.6.1}}\n",
                        "line 3, notifications[1].shows: there is no such key; did you mean show?"),
                broken(
                        "profile: m\nnotifications:\n  - {oid: 1.3.6.1.9, title: Fan, show: {speed: fast}}\n",
                        "line 3, notifications[1].show.speed: an object identifier in dotted numbers is wanted"));
    }

    static Stream<Arguments> brokenWhole() {
        return Stream.of(
                broken(
                        "profile: m\nscalars:\n  radio.utilizaton: 1.3.6.1.9.0\n",
                        "maker.yaml line 3, scalars.radio.utilizaton: there is no such measurement; did you mean"
                                + " radio.utilisation?"),
                broken(
                        "profile: m\nscalars:\n  device.cpu: 1.3.six.0\n",
                        "maker.yaml line 3, scalars.device.cpu: an object identifier in dotted numbers is wanted, such"
                                + " as 1.3.6.1.2.1.1.3.0, not 1.3.six.0"),
                broken(
                        "profile: m\nscalars:\n  device.cpu: 1.3.4294967296.0\n",
                        "line 3, scalars.device.cpu: an object identifier"),
                broken(
                        "profile: m\nscalar:\n  device.cpu: 1.3.6.0\n",
                        "maker.yaml line 3, scalar: there is no such key; did you mean scalars?"),
                broken("select: {object-id: 1.3.6}\n", "maker.yaml line 1: the key profile is missing"),
                broken("profile: Big Name\n", "line 1, profile: a name of small letters, digits and hyphens is wanted"),
                broken("profile: m\nscalars: [1.3.6]\n", "line 2, scalars: a block of keys is wanted"),
                broken(
                        "profile: m\nscalars:\n  device.cpu: 1.3.6.1.0\n  device.cpu: 1.3.6.2.0\n",
                        "line 4, scalars.device.cpu: stands here twice; keep one"),
                broken(
                        "profile: m\nscalars:\n  device.cpu: {oid: 1.3.6.1.0, as: percent}\n",
                        "line 3, scalars.device.cpu.as: there is no form percent; possible are plain, rate, bit-rate"));
    }

    static Stream<Arguments> brokenMeasures() {
        return Stream.of(
                broken(
                        "profile: m\nscalars:\n  device.cpu: {oid: 1.3.6.1.0, scale: big}\n",
                        "line 3, scalars.device.cpu.scale: a number is wanted, not big"),
                broken(
                        "profile: m\nscalars:\n  device.cpu: {oid: 1.3.6.1.0, pace: hourly}\n",
                        "line 3, scalars.device.cpu.pace: slow or fast is wanted, not hourly"),
                broken(
                        "profile: m\nscalars:\n  device.memory: {share: 1.3.6.1.0}\n",
                        "line 3, scalars.device.memory: share and of belong together"),
                broken(
                        "profile: m\nscalars:\n  fact.serial: {oid: 1.3.6.1.0, as: rate}\n",
                        "line 3, scalars.fact.serial.as: rate gives a figure, but fact.serial is a text"),
                broken(
                        "profile: m\nscalars:\n  radio.noise: 1.3.6.1.0\n",
                        "scalars: radio.noise is measured per row: it belongs under tables"),
                broken(
                        "profile: m\ntables:\n  - entry: 1.3.6.1\n    columns: {radio.noise: 7}\n",
                        "line 3, tables[1].index: a table about radios needs index with one part that is radio or"
                                + " interface"),
                broken(
                        "profile: m\ntables:\n  - entry: 1.3.6.1\n    columns: {device.cpu: 7}\n",
                        "a table about the device needs either pick (one row) or fold (all rows)"),
                broken(
                        "profile: m\ntables:\n  - entry: 1.3.6.1\n    index: [radios]\n    columns: {radio.noise: 7}\n",
                        "line 4, tables[1].index: there is no part radios; did you mean radio?"),
                broken(
                        "profile: m\n"
                                + "tables:\n"
                                + "  - entry: 1.3.6.1\n"
                                + "    index: [radio]\n"
                                + "    columns: {radio.noise: 7, network.clients: 2}\n",
                        "one table is about the device, about radios or about networks, not several of them"));
    }

    static Stream<Arguments> brokenTables() {
        return Stream.of(
                broken(
                        "profile: m\n"
                                + "tables:\n"
                                + "  - entry: 1.3.6.1\n"
                                + "    index: [radio]\n"
                                + "    columns: {radio.noise: 1.3.7}\n",
                        "line 5, tables[1].columns.radio.noise: the number of a column below the entry is wanted, not"
                                + " 1.3.7"),
                broken(
                        "profile: m\n"
                                + "scalars:\n"
                                + "  device.cpu: 1.3.6.1.0\n"
                                + "tables:\n"
                                + "  - entry: 1.3.6.1\n"
                                + "    fold: average\n"
                                + "    columns: {device.cpu: 7}\n",
                        "line 7, tables[1].columns.device.cpu: is measured twice in this profile"),
                broken(
                        "profile: m\ntables:\n  - entry: 1.3.6.1\n    pick: uplnk\n    columns: {device.cpu: 7}\n",
                        "line 4, tables[1].pick: there is no pick uplnk; did you mean uplink?"),
                broken(
                        "profile: m\nselect: {kind: bridge, object-id: 1.3.6}\n",
                        "line 2, select[1].kind: there is no kind bridge"),
                broken("profile: m\n  about: x\n :", "this is no valid YAML"),
                broken("", "maker.yaml line 1: the file is empty"),
                broken("- a\n- b\n", "maker.yaml line 1: a block of keys is wanted here"));
    }

    private static Arguments broken(String text, String message) {
        return Arguments.of(text, message);
    }

    @ParameterizedTest
    @MethodSource({"brokenWhole", "brokenNotifications", "brokenMeasures", "brokenTables"})
    void saysWhereAndWhatIsWrong(String text, String message) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(ProfileException.class)
                .hasMessageContaining(message);
    }

    @Test
    void findsAllFaultsAtOnce() {
        assertThatThrownBy(() -> read("profile: m\nscalars:\n  device.cpuu: 1.3.6.1.0\n  device.memory: x\nmore: 1\n"))
                .hasMessageContaining("line 3, scalars.device.cpuu")
                .hasMessageContaining("line 4, scalars.device.memory")
                .hasMessageContaining("line 5, more");
    }
}
