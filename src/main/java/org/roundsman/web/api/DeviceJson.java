package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.readings.DeviceRow;

/**
 * One device.
 *
 * @param entered null for those who may not change the fleet
 */
@Schema(name = "Device")
record DeviceJson(
        @Schema(description = "Its place in the fleet, and how it is now")
        Line now,

        @Schema(nullable = true, description = "What was entered about it; null for viewers")
        Entry entered,

        @Schema(description = "What it said about itself at its last slow read")
        List<Fact> facts,

        List<Radio> radios) {

    static DeviceJson of(
            DeviceRow row, Entry entered, List<DeviceFacts.Said> facts, List<DeviceFacts.NamedRadio> radios) {
        return new DeviceJson(
                Line.of(row),
                entered,
                facts.stream()
                        .map(f -> new Fact(
                                f.fact().toLowerCase(java.util.Locale.ROOT).replace('_', '-'), f.value(), f.since()))
                        .toList(),
                radios.stream()
                        .map(r -> new Radio(r.number(), r.label(), r.mac()))
                        .toList());
    }

    /** In lists: where it is, and how it is now. */
    @Schema(name = "DeviceLine")
    record Line(
            @Schema(examples = "417") long id,
            @Schema(examples = "Waiting room") String name,

            @Schema(examples = "access-point", description = "access-point, network-switch or gateway")
            String kind,

            @Schema(examples = "ceiling") String place,
            @Schema(examples = "ap-3.pebblegate.example") String host,
            @Schema(examples = "21") long siteId,
            @Schema(examples = "Harbour clinic") String site,
            @Schema(examples = "7") long customerId,
            @Schema(examples = "Pebblegate Dental") String customer,
            boolean paused,

            @Schema(examples = "answering", description = "answering, silent, refusing or unwatched")
            String condition,

            @Schema(nullable = true, description = "Start of that condition", examples = "2026-03-04T11:58:00Z")
            Instant since,

            @Schema(nullable = true, examples = "2026-03-04T12:00:00Z")
            Instant lastAnsweredAt,

            @Schema(examples = "TR-22") String model,
            @Schema(examples = "4.2.1") String firmware,
            @Schema(nullable = true, examples = "14") Integer clients) {

        static Line of(DeviceRow row) {
            return new Line(
                    row.deviceId(),
                    row.name(),
                    Choice.word(row.kind()),
                    row.place(),
                    row.host(),
                    row.siteId(),
                    row.site(),
                    row.customerId(),
                    row.customer(),
                    row.paused(),
                    Choice.word(row.condition()),
                    row.since().orElse(null),
                    row.lastAnswered().orElse(null),
                    row.model(),
                    row.firmware(),
                    row.clients().isPresent() ? row.clients().getAsInt() : null);
        }
    }

    /** Something the device said about itself. */
    @Schema(name = "Fact")
    record Fact(
            @Schema(examples = "serial") String fact,
            @Schema(examples = "TR22-00417") String value,

            @Schema(description = "When this value was first read", examples = "2026-03-02T09:20:00Z")
            Instant since) {}

    /** One transmitter of an access point. */
    @Schema(name = "Radio")
    record Radio(
            @Schema(examples = "1") int number,
            @Schema(examples = "wlan0") String label,
            @Schema(examples = "00-00-5E-00-53-17") String mac) {}

    /** A device as entered. */
    @Schema(name = "DeviceEntry")
    record Entry(
            @Schema(required = true, maxLength = 120, examples = "Waiting room")
            String name,

            @Schema(required = true, description = "access-point, network-switch or gateway", examples = "access-point")
            String kind,

            @Schema(required = true, description = "Address or host name", examples = "ap-3.pebblegate.example")
            String host,

            @Schema(
                    description = "UDP port; 161 where none is given",
                    minimum = "1",
                    maximum = "65535",
                    examples = "161")
            Integer port,

            @Schema(required = true, examples = "5") Long credentialId,
            @Schema(nullable = true, examples = "2") Long modelId,
            @Schema(maxLength = 200, examples = "ceiling") String place,

            @Schema(
                    description = "Seconds between two rounds; 60 where none are given",
                    minimum = "10",
                    maximum = "3600",
                    examples = "60")
            Integer intervalSeconds,

            @Schema(description = "Nobody looks while this is true")
            Boolean paused)
            implements ApiBody {

        private static final int SNMP = 161;
        private static final int MINUTE = 60;

        static Entry of(Device device) {
            return new Entry(
                    device.name,
                    Choice.word(device.kind),
                    device.host,
                    device.port,
                    device.credential.id,
                    device.model == null ? null : device.model.id,
                    device.place,
                    device.intervalSeconds,
                    device.paused);
        }

        DeviceDraft draft() {
            return new DeviceDraft(
                    Given.text(name),
                    Choice.of(DeviceKind.class, kind),
                    Given.text(host),
                    Given.or(port, SNMP),
                    credentialId,
                    modelId,
                    Given.text(place),
                    Given.or(intervalSeconds, MINUTE),
                    Given.or(paused, false));
        }
    }
}
