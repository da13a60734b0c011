package org.roundsman.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;
import org.roundsman.topology.TableFixture;
import org.roundsman.topology.WiringStore;
import org.roundsman.triage.Finding;

/** An invented house with a gateway, a switch and three access points, and alarms of it. */
@ApplicationScoped
public class AlarmHouse {

    public static final int POINTS = 3;

    /** Locally administered addresses. */
    private static final String MAC = "02:00:5e:00:57:";

    private final FleetFixture fleet;
    private final Sites sites;
    private final Devices devices;
    private final Models models;
    private final Alarms alarms;

    AlarmHouse(FleetFixture fleet, Sites sites, Devices devices, Models models, Alarms alarms) {
        this.fleet = fleet;
        this.sites = sites;
        this.devices = devices;
        this.models = models;
        this.alarms = alarms;
    }

    /** Where alarms go, and what hangs on what. */
    @ApplicationScoped
    public static class Alarms {
        private final AlarmDesk desk;
        private final AlarmBook book;
        private final WiringStore wiring;
        private final Clock clock;

        Alarms(AlarmDesk desk, AlarmBook book, WiringStore wiring, Clock clock) {
            this.desk = desk;
            this.book = book;
            this.wiring = wiring;
            this.clock = clock;
        }

        AlarmDesk desk() {
            return desk;
        }

        AlarmBook book() {
            return book;
        }

        WiringStore wiring() {
            return wiring;
        }

        Clock clock() {
            return clock;
        }
    }

    /** The house. */
    public record House(
            String customer,
            long customerId,
            String site,
            long siteId,
            long gateway,
            long switchId,
            List<Long> points) {}

    public House house(String name) {
        FleetFixture.Place place = fleet.place(name);
        String site = "House of " + place.customer();
        long siteId = sites.add(place.customerId(), draft(site)).id;
        long gateway = device(siteId, place, DeviceKind.GATEWAY, "gw", "rack in the cellar", null, 1);
        long switchId = device(siteId, place, DeviceKind.NETWORK_SWITCH, "sw-1", "rack in the cellar", null, 2);
        Model model = models.ensure(model());
        List<Long> points = new ArrayList<>();
        for (int i = 1; i <= POINTS; i++) {
            points.add(device(
                    siteId, place, DeviceKind.ACCESS_POINT, "ap-" + i, "ceiling of floor " + i, model.id, 10 + i));
        }
        wire(siteId, gateway, switchId, points);
        return new House(place.customer(), place.customerId(), site, siteId, gateway, switchId, points);
    }

    private static SiteDraft draft(String name) {
        return new SiteDraft(
                name,
                "Europe/Berlin",
                "3 Lantern Street",
                "12345",
                "Saltmarsh",
                "DE",
                "Key at the reception; the cellar door sticks",
                100_000,
                40_000,
                List.of(new ServiceHours(1, LocalTime.of(8, 0), LocalTime.of(18, 0))),
                List.of(new SiteContact("Ottoline Brisk", "housekeeping", "+49 000 4711", "brisk@brackwater.example")));
    }

    private static Model model() {
        Model model = new Model();
        model.maker = "Tamarack Radio";
        model.name = "TR-22H";
        model.kind = DeviceKind.ACCESS_POINT;
        model.radios = 2;
        model.antenna = "internal";
        model.poeClass = 4;
        return model;
    }

    private long device(
            long site, FleetFixture.Place place, DeviceKind kind, String name, String where, Long model, int number) {
        DeviceDraft draft = new DeviceDraft(
                name, kind, "127.99.7." + number, 16_097, place.credentialId(), model, where, 60, false);
        return devices.add(site, draft).id;
    }

    private void wire(long site, long gateway, long switchId, List<Long> points) {
        Instant at = alarms.clock().instant().truncatedTo(ChronoUnit.MILLIS).minusSeconds(60);
        alarms.wiring()
                .full(
                        gateway,
                        site,
                        TableFixture.aSwitch(MAC + "01", 2)
                                .hears(1, MAC + "02", "sw-1")
                                .reading(DeviceKind.GATEWAY, at));
        TableFixture tables = TableFixture.aSwitch(MAC + "02", 8).hears(8, MAC + "01", "gw");
        for (int i = 0; i < points.size(); i++) {
            tables.hears(i + 1, MAC + "1" + (i + 1), "ap-" + (i + 1)).power(i + 1, 3, 5);
        }
        alarms.wiring().full(switchId, site, tables.reading(DeviceKind.NETWORK_SWITCH, at));
        for (int i = 0; i < points.size(); i++) {
            alarms.wiring()
                    .full(
                            points.get(i),
                            site,
                            new TableFixture()
                                    .mac(TableFixture.IF + "6.1", MAC + "1" + (i + 1))
                                    .reading(DeviceKind.ACCESS_POINT, at));
        }
        alarms.wiring().workOut(site);
    }

    private Instant ago(int minutes) {
        return alarms.clock().instant().truncatedTo(ChronoUnit.MILLIS).minus(Duration.ofMinutes(minutes));
    }

    /** The site lost its uplink twelve minutes ago: one cause, and everything at the site points to it. */
    public long uplinkLost(House house) {
        AlarmKey cause = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(house.siteId()));
        List<Signal> signals =
                new ArrayList<>(List.of(raise(cause, Severity.CRITICAL, 12, "5 of 5 devices are silent.")));
        List<Verdict> verdicts = new ArrayList<>();
        List<Long> silent = new ArrayList<>(List.of(house.gateway(), house.switchId()));
        silent.addAll(house.points());
        verdicts.add(new Verdict(
                cause,
                CauseKind.UPLINK_LOST,
                Optional.empty(),
                List.of(
                        "The gateway gw last answered at 10:41:12.",
                        "3 of 3 access points are silent since.",
                        "Other sites answer."),
                forty(POINTS),
                Set.copyOf(silent),
                true));
        for (long device : silent) {
            AlarmKey key = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
            signals.add(raise(key, Severity.MAJOR, 12, "Has not answered for 3 rounds."));
            verdicts.add(new Verdict(
                    key,
                    CauseKind.UPLINK_LOST,
                    Optional.of(cause),
                    List.of("Silent since the gateway is."),
                    Impact.unknown(1, true),
                    Set.of(),
                    true));
        }
        alarms.desk().accept(signals, verdicts);
        return id(cause);
    }

    /** The port of one access point delivers no power any more. */
    public long portOff(House house, int point, int people) {
        AlarmKey key = AlarmKey.of(
                AlarmType.DEVICE_SILENT, Resource.device(house.points().get(point)));
        judged(
                raise(key, Severity.CRITICAL, 5, "Has not answered for 3 rounds."),
                CauseKind.PORT_NOT_DELIVERING,
                people,
                List.of(
                        "ap-" + (point + 1) + " last answered at 10:48:03.",
                        "Port " + (point + 1) + " of sw-1 delivers no power."));
        return id(key);
    }

    /** The port of one access point had no link and has one again; the access point does not answer yet. */
    public long portBack(House house, int point) {
        AlarmKey key = AlarmKey.of(
                AlarmType.DEVICE_SILENT, Resource.device(house.points().get(point)));
        judged(
                raise(key, Severity.MAJOR, 5, "Has not answered for 3 rounds."),
                CauseKind.LINK_DOWN,
                9,
                List.of(
                        "Port " + (point + 1) + " of sw-1 has no link, read at 10:48:03.",
                        "So it has no power, or its cable is out.",
                        Finding.WORKS_AGAIN));
        return id(key);
    }

    /** A busy radio: a warning from which nobody suffers yet. */
    public long busy(House house, int point) {
        AlarmKey key = AlarmKey.of(
                AlarmType.UTILISATION_HIGH, Resource.radio(house.points().get(point), 2));
        judged(
                raise(key, Severity.WARNING, 40, "Channel 36 was busy 61 % of the time for 15 minutes."),
                CauseKind.ITSELF,
                35,
                List.of());
        return id(key);
    }

    private void judged(Signal.Raise raise, CauseKind cause, int people, List<String> evidence) {
        Impact impact = new Impact(OptionalInt.of(people), OptionalInt.of(0), OptionalInt.empty(), 1, true);
        alarms.desk()
                .accept(
                        List.of(raise),
                        List.of(new Verdict(raise.key(), cause, Optional.empty(), evidence, impact, Set.of(), true)));
    }

    private static Impact forty(int points) {
        return new Impact(OptionalInt.of(12), OptionalInt.of(28), OptionalInt.empty(), points, true);
    }

    private Signal.Raise raise(AlarmKey key, Severity severity, int minutes, String text) {
        return new Signal.Raise(key, severity, ago(minutes), ago(minutes - 1), text);
    }

    public void over(long alarm) {
        alarms.book().active().values().stream()
                .filter(one -> one.id() == alarm)
                .forEach(one -> alarms.desk().accept(List.of(new Signal.Clear(one.key(), ago(0), "Answers again."))));
    }

    /** Clears whatever other tests left. */
    public void clearAll() {
        List<Signal> clears = new ArrayList<>();
        alarms.book().active().keySet().forEach(key -> clears.add(new Signal.Clear(key, ago(120), "over")));
        alarms.desk().accept(clears);
    }

    private long id(AlarmKey key) {
        return alarms.book().active().get(key).id();
    }
}
