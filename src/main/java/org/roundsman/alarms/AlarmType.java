package org.roundsman.alarms;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The alarm inventory (RFC 8632, section 3.2): every type of alarm that can be raised, with what is seen and what to do. The id is
 * what tables store and the API shows; it is never reused.
 */
public enum AlarmType {
    DEVICE_SILENT(
            "device-silent",
            EventType.COMMUNICATIONS,
            Resource.Kind.DEVICE,
            "Does not answer",
            "The device has not answered for three rounds in a row.",
            "Check power, cable and switch port of the device."),
    UPLINK_LOST(
            "uplink-lost",
            EventType.COMMUNICATIONS,
            Resource.Kind.SITE,
            "Site cannot be reached",
            "Everything at the site that was asked has fallen silent.",
            "Call the site: is there power? Then the carrier. The gateway and its line come before any access point."),
    VIEW_LOST(
            "view-lost",
            EventType.COMMUNICATIONS,
            Resource.Kind.SERVICE,
            "We are blind",
            "Sites of several customers fell silent at the same time: the fault is most likely ours.",
            "Check the connection of the machine that Roundsman runs on before calling any customer."),
    CREDENTIALS_REFUSED(
            "credentials-refused",
            EventType.SECURITY,
            Resource.Kind.DEVICE,
            "Credentials refused",
            "The device answers, but rejects our credentials.",
            "Compare the credentials with the device, or choose others on its page."),
    DEVICE_RESTARTED(
            "device-restarted",
            EventType.EQUIPMENT,
            Resource.Kind.DEVICE,
            "Restarted",
            "The device's uptime began again.",
            "Once is seldom a fault. More often: power supply, PoE budget, heat, firmware."),
    FLAPPING(
            "flapping",
            EventType.COMMUNICATIONS,
            Resource.Kind.DEVICE,
            "Comes and goes",
            "The device fell silent and came back several times within an hour.",
            "Look for a loose cable, a PoE budget at its limit, or a failing power supply."),
    RADIO_OFF(
            "radio-off",
            EventType.EQUIPMENT,
            Resource.Kind.DEVICE,
            "Radio off",
            "A radio that used to be on the air shows no channel or has gone missing.",
            "Check the radio's settings and the device's log; after radar was seen a radio may wait before it sends again (DFS)."),
    UTILISATION_HIGH(
            "utilisation-high",
            EventType.QUALITY_OF_SERVICE,
            Resource.Kind.DEVICE,
            "Channel busy",
            "The radio's channel is busy most of the time.",
            "Check channel plan and neighbours; move clients to another band, or add an access point."),
    CLIENTS_HIGH(
            "clients-high",
            EventType.QUALITY_OF_SERVICE,
            Resource.Kind.DEVICE,
            "Many clients",
            "More clients are on the radio than it serves well.",
            "Spread the clients over bands and access points, or add one."),
    RETRIES_HIGH(
            "retries-high",
            EventType.QUALITY_OF_SERVICE,
            Resource.Kind.DEVICE,
            "Many retries",
            "Many frames get through only after a retry.",
            "Look for interference, far-away clients, or a damaged antenna."),
    PORT_SLOW(
            "port-slow",
            EventType.EQUIPMENT,
            Resource.Kind.DEVICE,
            "Uplink port slow",
            "The uplink port runs slower than it can.",
            "Check the cable: four good pairs are needed for 1 Gb/s. Then the switch port's settings."),
    PORT_ERRORS(
            "port-errors",
            EventType.EQUIPMENT,
            Resource.Kind.DEVICE,
            "Uplink port has errors",
            "Frames are damaged on the uplink port.",
            "Replace the cable or its plug; check for a duplex mismatch."),
    CPU_HIGH(
            "cpu-high",
            EventType.PROCESSING_ERROR,
            Resource.Kind.DEVICE,
            "Processor busy",
            "The device's processor is busy most of the time.",
            "Look for what changed: firmware, client count, features switched on."),
    MEMORY_HIGH(
            "memory-high",
            EventType.PROCESSING_ERROR,
            Resource.Kind.DEVICE,
            "Memory short",
            "The device's memory is nearly used up.",
            "Plan a restart; when it comes back, look for a firmware with the leak mended."),
    CLOCK_OFF(
            "clock-off",
            EventType.PROCESSING_ERROR,
            Resource.Kind.DEVICE,
            "Clock off",
            "The device's clock is wrong, so its log and its certificates' dates are too.",
            "Check its time server (NTP) and its time zone."),
    CONFIGURATION_CHANGED(
            "configuration-changed",
            EventType.SECURITY,
            Resource.Kind.DEVICE,
            "Configuration changed",
            "A network, a radio or the firmware is not what it was.",
            "If nobody of yours did it, find out who did."),
    SETUP_NETWORK_OPEN(
            "setup-network-open",
            EventType.SECURITY,
            Resource.Kind.DEVICE,
            "Set-up network on the air",
            "An open network for setting devices up is still on the air.",
            "Switch the set-up network off."),
    FIRMWARE_WITHDRAWN(
            "firmware-withdrawn",
            EventType.SECURITY,
            Resource.Kind.SITE,
            "Firmware should not run",
            "Devices of the site run firmware that was withdrawn, or that lacks a security fix.",
            "Look at the work list of the firmware page, and plan the upgrade."),
    COVER_ENDING(
            "cover-ending",
            EventType.EQUIPMENT,
            Resource.Kind.SITE,
            "Warranty ends soon",
            "The warranty of devices of the site ends within 30 days.",
            "Have faults mended while they are covered; then extend the cover or plan the replacement."),
    POLLER_LATE(
            "poller-late",
            EventType.PROCESSING_ERROR,
            Resource.Kind.SERVICE,
            "Rounds are late",
            "Our own rounds begin later than they should.",
            "Look at Own health: processor, number of devices, silent devices."),
    STORING_BEHIND(
            "storing-behind",
            EventType.PROCESSING_ERROR,
            Resource.Kind.SERVICE,
            "Storing is behind",
            "Readings wait for the database; pages show what was last stored.",
            "Look at Own health and at the database."),
    DISK_FILLING(
            "disk-filling",
            EventType.PROCESSING_ERROR,
            Resource.Kind.SERVICE,
            "Disk is filling",
            "The disk of the data folder is nearly full.",
            "Free space or shorten how long readings are kept, before the database stops.");

    private static final Map<String, AlarmType> BY_ID =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(AlarmType::id, type -> type));

    private final String id;
    private final EventType event;
    private final Resource.Kind resource;
    private final String title;
    private final String meaning;
    private final String advice;

    AlarmType(String id, EventType event, Resource.Kind resource, String title, String meaning, String advice) {
        this.id = id;
        this.event = event;
        this.resource = resource;
        this.title = title;
        this.meaning = meaning;
        this.advice = advice;
    }

    /** Such as {@code device-silent}. */
    public String id() {
        return id;
    }

    public EventType event() {
        return event;
    }

    /** Whether it keeps people from the network: what does not answer does; whoever uses a busy channel is online. */
    public boolean cutsOff() {
        return event == EventType.COMMUNICATIONS;
    }

    /** What sort of resource it is raised of. */
    public Resource.Kind resource() {
        return resource;
    }

    /** Two or three words for a list. */
    public String title() {
        return title;
    }

    /** What is seen, in one sentence. */
    public String meaning() {
        return meaning;
    }

    /** What to do about it. */
    public String advice() {
        return advice;
    }

    /** The type with that id, if there is one. */
    public static Optional<AlarmType> byId(String id) {
        return Optional.ofNullable(BY_ID.get(id));
    }
}
