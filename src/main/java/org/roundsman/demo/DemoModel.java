package org.roundsman.demo;

import static org.roundsman.demo.Band.BAND_24;
import static org.roundsman.demo.Band.BAND_5;
import static org.roundsman.demo.Band.BAND_6;
import static org.roundsman.fleet.DeviceKind.ACCESS_POINT;
import static org.roundsman.fleet.DeviceKind.GATEWAY;
import static org.roundsman.fleet.DeviceKind.NETWORK_SWITCH;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;

/**
 * What the invented makers sell: "Tamarack Radio", and "Gorsehill Instruments", whose one model no shipped profile knows.
 * Enterprise number 32473 is kept for documentation by RFC 5612.
 */
public enum DemoModel {
    TR_10(ACCESS_POINT, 1, List.of(BAND_24), 1, 2),
    TR_22(ACCESS_POINT, 2, List.of(BAND_24, BAND_5), 2, 3),
    TR_33(ACCESS_POINT, 3, List.of(BAND_24, BAND_5, BAND_6), 3, 4),
    TR_50X(ACCESS_POINT, 4, List.of(BAND_24, BAND_5), 2, 4),
    TS_24(NETWORK_SWITCH, 20, List.of(), 0, null),
    TG_4(GATEWAY, 30, List.of(), 0, null),
    /** Of the other maker; takes no standard power. */
    GI_7(ACCESS_POINT, 7, List.of(BAND_24, BAND_5), 2, null);

    /** The name of the maker of all but one, as it is stored and shown. */
    public static final String MAKER = "Tamarack Radio";

    /** The maker of whom nobody has heard yet. */
    public static final String OTHER_MAKER = "Gorsehill Instruments";

    /** Ports of a switch besides its uplink; each can feed power. */
    public static final int SWITCH_PORTS = 24;
    /** Ports of a gateway towards the site. */
    public static final int GATEWAY_PORTS = 3;

    private final DeviceKind kind;
    private final int product;
    private final List<Band> bands;
    private final int streams;
    private final Integer poeClass;

    DemoModel(DeviceKind kind, int product, List<Band> bands, int streams, Integer poeClass) {
        this.kind = kind;
        this.product = product;
        this.bands = bands;
        this.streams = streams;
        this.poeClass = poeClass;
    }

    /** Its name in the catalogue, such as TR-50X. */
    public String label() {
        return name().replace('_', '-');
    }

    public DeviceKind kind() {
        return kind;
    }

    public String maker() {
        return this == GI_7 ? OTHER_MAKER : MAKER;
    }

    /** The models that the service is told about: those of the maker that it knows. */
    public static List<DemoModel> catalogue() {
        return Arrays.stream(values())
                .filter(model -> model.maker().equals(MAKER))
                .toList();
    }

    /** sysObjectID of its agents, dotted. */
    public String objectId() {
        return "1.3.6.1.4.1.32473." + (this == GI_7 ? "9.1." : "1.") + product;
    }

    /** One band for each radio, by radio number; empty for switches and gateways. */
    public List<Band> bands() {
        return bands;
    }

    /** The bands as the model table writes them, such as {@code 2.4,5}. */
    public String bandList() {
        return bands.stream()
                .map(b -> b == BAND_24 ? "2.4" : Integer.toString((int) b.gigahertz()))
                .collect(Collectors.joining(","));
    }

    /** Spatial streams; 0 for switches and gateways. */
    public int streams() {
        return streams;
    }

    public boolean outdoor() {
        return this == TR_50X;
    }

    /** {@code internal}, {@code external}, or empty where there is none. */
    public String antenna() {
        if (kind != ACCESS_POINT) {
            return "";
        }
        return outdoor() ? "external" : "internal";
    }

    /** IEEE 802.3 power class, or null for mains. */
    public Integer poeClass() {
        return poeClass;
    }

    /** The port that leads towards the gateway, or from the gateway to the line; numbered as on the front plate. */
    public int uplinkPort() {
        return switch (kind) {
            case ACCESS_POINT -> 1;
            case NETWORK_SWITCH -> SWITCH_PORTS + 1;
            case GATEWAY -> GATEWAY_PORTS + 1;
        };
    }

    /** The firmware that the maker ships now. */
    public String currentFirmware() {
        return switch (kind) {
            case ACCESS_POINT -> this == GI_7 ? "2.0.4" : "6.4.2";
            case NETWORK_SWITCH -> "3.1.0";
            case GATEWAY -> "5.0.7";
        };
    }

    /** The firmware that comes next. */
    public String nextFirmware() {
        return switch (kind) {
            case ACCESS_POINT -> this == GI_7 ? "2.1.0" : "6.5.0";
            case NETWORK_SWITCH -> "3.2.0";
            case GATEWAY -> "5.1.0";
        };
    }

    /** The firmware line that should not run any more. */
    public String staleFirmware() {
        return switch (kind) {
            case ACCESS_POINT -> this == GI_7 ? "1.8.1" : "5.9.13";
            case NETWORK_SWITCH -> "2.7.1";
            case GATEWAY -> "4.2.0";
        };
    }
}
