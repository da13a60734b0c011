package org.roundsman.visits;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;

/** What a sheet says to bring and to beware of. Common practice, no source, but where one is named. */
class WhatToBringTest {

    private static Device device(String place, Model model) {
        Device device = new Device();
        device.id = 7L;
        device.kind = DeviceKind.ACCESS_POINT;
        device.name = "ap-7";
        device.place = place;
        device.model = model;
        return device;
    }

    private static Model model(Integer poeClass, String antenna, boolean outdoor) {
        Model model = new Model();
        model.maker = "Tamarack Radio";
        model.name = "TR-22";
        model.kind = DeviceKind.ACCESS_POINT;
        model.poeClass = poeClass == null ? null : poeClass.shortValue();
        model.antenna = antenna;
        model.outdoor = outdoor;
        return model;
    }

    private static Unit unit(String place, Model model) {
        return new Unit(device(place, model), Map.of(), List.of(), Optional.empty());
    }

    @Test
    void theSpareIsOfTheSameModel() {
        assertThat(WhatToBring.of(List.of(unit("reception", model(4, "internal", false)))))
                .contains("Spare: one Tamarack Radio TR-22.")
                .noneMatch(line -> line.startsWith("Ladder"));
    }

    @Test
    void withoutAModelWhatTheDeviceSaysDoes() {
        Unit unit = new Unit(
                device("", null), Map.of("MODEL", "TR-33", "MAKER", "Tamarack Radio"), List.of(), Optional.empty());
        assertThat(WhatToBring.of(List.of(unit))).contains("Spare: one Tamarack Radio TR-33.");
        assertThat(WhatToBring.of(List.of(unit("", null))))
                .contains("Spare: one access point; its model is not known.");
    }

    @Test
    void mountAndMainsAreNamedWhereTheyAreKnown() {
        Model model = model(null, "internal", false);
        model.mains = true;
        model.mount = "wall plate";
        assertThat(WhatToBring.of(List.of(unit("counter", model))))
                .contains("Mount: wall plate, with its screws, for “counter”.")
                .anyMatch(line -> line.startsWith("Power: by mains;") && line.contains("licensed electrician"));
        Device rack = device("", model);
        rack.kind = DeviceKind.NETWORK_SWITCH;
        model.mount = "rack, one unit high";
        assertThat(WhatToBring.of(List.of(new Unit(rack, Map.of(), List.of(), Optional.empty()))))
                .contains("Mount: rack, one unit high, with its screws, the place is not entered.");
        model.mount = "";
        assertThat(WhatToBring.of(List.of(new Unit(rack, Map.of(), List.of(), Optional.empty()))))
                .noneMatch(line -> line.startsWith("Mount"));
    }

    /** IEEE 802.3 power classes (from memory, agrees with secondary tables): what a device of the class may draw. */
    @ParameterizedTest
    @CsvSource({
        "0, 802.3af, 12.95",
        "1, 802.3af, 3.84",
        "2, 802.3af, 6.49",
        "3, 802.3af, 12.95",
        "4, 802.3at, 25.5",
        "5, 802.3bt, 40",
        "6, 802.3bt, 51",
        "7, 802.3bt, 62",
        "8, 802.3bt, 71.3"
    })
    void thePowerClassIsSaidWithItsWatts(int poeClass, String standard, String watts) {
        assertThat(WhatToBring.of(List.of(unit("", model(poeClass, "", false)))))
                .anyMatch(line -> line.contains(
                        "PoE class " + poeClass + " (IEEE " + standard + "), up to " + watts + " W at the device"));
    }

    @ParameterizedTest
    @CsvSource({
        "ceiling of the hall, Ladder",
        "above the counter, Ladder",
        "mast, Access to a mast or roof",
        "roof east, Access to a mast or roof",
        "Mast 3, Access to a mast or roof"
    })
    void aHighPlaceNeedsAWayUp(String place, String thing) {
        assertThat(WhatToBring.of(List.of(unit(place, null)))).anyMatch(line -> line.startsWith(thing));
    }

    @ParameterizedTest
    @CsvSource({"reception", "rack 2", "workshop", "topaz room"})
    void anOrdinaryPlaceNeedsNone(String place) {
        assertThat(WhatToBring.of(List.of(unit(place, null))))
                .noneMatch(line -> line.startsWith("Ladder") || line.startsWith("Access to"));
    }

    @Test
    void theAntennaIsSaid() {
        assertThat(WhatToBring.of(List.of(unit("", model(4, "external", true)))))
                .anyMatch(line -> line.startsWith("Antenna: external"));
        assertThat(WhatToBring.of(List.of(unit("", model(4, "internal", false)))))
                .anyMatch(line -> line.startsWith("Antenna: internal"));
    }

    @Test
    void nothingIsNamedTwice() {
        Unit unit = unit("ceiling", model(4, "internal", false));
        assertThat(WhatToBring.of(List.of(unit, unit))).doesNotHaveDuplicates();
    }

    @Test
    void heightMainsRadioAndLocalCodesAreAlwaysNamed() {
        List<String> indoors = Cautions.of(List.of(unit("reception", model(4, "internal", false))), List.of());
        assertThat(indoors)
                .hasSize(4)
                .anyMatch(line -> line.startsWith("Working at height"))
                .anyMatch(line -> line.contains("licensed electrician"))
                .anyMatch(line -> line.contains("local regulator"))
                .anyMatch(line -> line.startsWith("Local codes"));
        assertThat(Cautions.of(List.of(unit("mast", model(4, "external", true))), List.of()))
                .hasSize(5)
                .anyMatch(line -> line.startsWith("Lightning"));
    }

    /** Where nobody knows, the caution stands. */
    @Test
    void lightningIsNamedWhereverADeviceMayBeOutdoors() {
        assertThat(Cautions.of(List.of(), List.of())).anyMatch(line -> line.startsWith("Lightning"));
        assertThat(Cautions.of(List.of(unit("reception", null)), List.of()))
                .anyMatch(line -> line.startsWith("Lightning"));
        assertThat(Cautions.of(
                        List.of(unit("reception", model(4, "internal", false))),
                        List.of(device("yard", model(4, "internal", false)))))
                .anyMatch(line -> line.startsWith("Lightning"));
    }
}
