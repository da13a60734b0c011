package org.roundsman.firmware;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.catalogue.FirmwareLine.Scheme;
import org.roundsman.fleet.DeviceKind;

/** An invented line with its policy, put together bit by bit, and devices that run it. */
public final class PolicyFixture {

    public static final long LINE = 3;
    public static final long MODEL = 22;
    public static final long OTHER_MODEL = 33;
    public static final long CUSTOMER = 7;
    public static final long SITE = 70;

    private final List<Release> releases = new ArrayList<>();
    private final List<SecurityMinimum> minimums = new ArrayList<>();
    private final List<LinePolicy.PilotSite> pilots = new ArrayList<>();
    private final List<PolicyException> exceptions = new ArrayList<>();
    private Scheme scheme = Scheme.DOTTED;
    private long number;

    public PolicyFixture semantic() {
        scheme = Scheme.SEMANTIC;
        return this;
    }

    public PolicyFixture release(Release.Stand stand, String version) {
        return release(stand, version, OptionalLong.empty());
    }

    public PolicyFixture release(Release.Stand stand, String version, OptionalLong model) {
        boolean withdrawn = stand == Release.Stand.WITHDRAWN;
        releases.add(new Release(
                ++number,
                LINE,
                model,
                "",
                version,
                stand,
                withdrawn ? "it restarts under load" : "",
                withdrawn ? Optional.of(LocalDate.of(2026, 10, 1)) : Optional.empty(),
                Optional.of(LocalDate.of(2026, 9, 1))));
        return this;
    }

    public PolicyFixture minimum(String version, String identifier, OptionalLong model) {
        minimums.add(new SecurityMinimum(++number, LINE, model, "", version, identifier, ""));
        return this;
    }

    public PolicyFixture pilot(long site) {
        pilots.add(new LinePolicy.PilotSite(site, "Mill Lane", CUSTOMER, "Pebblegate Dental"));
        return this;
    }

    public PolicyFixture exception(String version, LocalDate lastDay) {
        return exception(version, lastDay, "the till is certified with it");
    }

    public PolicyFixture exception(String version, LocalDate lastDay, String reason) {
        exceptions.add(new PolicyException(
                ++number, LINE, CUSTOMER, "Pebblegate Dental", version, reason, lastDay, "wren", Instant.EPOCH));
        return this;
    }

    public LinePolicy policy() {
        return new LinePolicy(
                LINE,
                "Tamarack indoor",
                scheme,
                "",
                List.of(new LinePolicy.ModelOf(MODEL, "TR-22"), new LinePolicy.ModelOf(OTHER_MODEL, "TR-33")),
                releases,
                minimums,
                pilots,
                exceptions);
    }

    public static Running running(long id, String version) {
        return running(id, version, place("Europe/Berlin"));
    }

    public static Running running(long id, String version, FirmwarePlace place) {
        return new Running(id, "ap-" + id, DeviceKind.ACCESS_POINT, version, Optional.empty(), false, place);
    }

    public static FirmwarePlace place(String zone) {
        return new FirmwarePlace(
                CUSTOMER,
                "Pebblegate Dental",
                SITE,
                "Mill Lane",
                ZoneId.of(zone),
                OptionalLong.of(MODEL),
                "TR-22",
                OptionalLong.of(LINE),
                "Tamarack indoor");
    }

    /** The same place with a device of another model and line. */
    public static FirmwarePlace place(OptionalLong model, OptionalLong line) {
        FirmwarePlace same = place("Europe/Berlin");
        return new FirmwarePlace(
                same.customerId(),
                same.customer(),
                same.siteId(),
                same.site(),
                same.zone(),
                model,
                "",
                line,
                line.isPresent() ? "Tamarack indoor" : "");
    }
}
