package org.roundsman.boot;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.Programme;
import org.roundsman.people.Role;

/** Switches faults of the invented fleet on and off; not there unless the program runs with an invented fleet. */
@Path("/invented-faults")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class FaultPages {

    /** Rows on the page; a large fleet has more faults than anybody reads. */
    private static final int MOST = 100;

    private static final String EVERYTHING = "everything";

    private final DemoRun demo;
    private final Clock clock;

    @Inject
    FaultPages(DemoRun demo, Clock clock) {
        this.demo = demo;
        this.clock = clock;
    }

    /** A fault of a device at the moment. */
    record Row(String device, String site, String fault, String words, boolean byHand) {}

    /** A fault to choose. */
    record Choice(String name, String words) {}

    /** A fault of the programme: what and where, and when it begins or ends. */
    record Act(String where, String words, boolean running, String left, String lasts) {}

    /** The programme of the hour; nothing runs where there are no acts. */
    record Hour(List<Act> acts) {}

    @CheckedTemplate(basePath = "invented")
    static class Templates {
        private Templates() {}

        static native TemplateInstance faults(
                List<Row> rows, List<Choice> choices, Hour hour, String entered, String wrong);

        static native TemplateInstance hour(Hour hour);
    }

    @GET
    public TemplateInstance page() {
        return page("", "");
    }

    /** The programme alone, for the page to put in place every few seconds. */
    @GET
    @Path("hour")
    public TemplateInstance programme() {
        return Templates.hour(hour());
    }

    /** Has the programme begin anew now, or ends it with all the faults of it that run. */
    @POST
    @Path("programme")
    public Response run(@RestForm boolean on) {
        for (Faults faults : faults()) {
            if (faults.fleet().accessPoints() >= DemoFleet.SMALLEST) {
                faults.run(on ? Programme.ofTheHour(faults.fleet(), clock.instant()) : Programme.none());
            }
        }
        return Response.seeOther(URI.create("/invented-faults")).build();
    }

    /** Gives a device, or every device of a site, a fault. */
    @POST
    public Response switchOn(@RestForm String where, @RestForm Fault fault) {
        return change(where, fault, true);
    }

    /** Takes a fault that was switched on by hand off again. */
    @POST
    @Path("off")
    public Response switchOff(@RestForm String where, @RestForm Fault fault) {
        return change(where, fault, false);
    }

    private Response change(String where, Fault fault, boolean on) {
        String name = where == null ? "" : where.strip();
        boolean found = false;
        for (Faults faults : faults()) {
            for (DemoDevice device : fault == null ? List.<DemoDevice>of() : named(faults.fleet(), name)) {
                found = true;
                if (on) {
                    faults.switchOn(fault, device);
                } else {
                    faults.switchOff(fault, device);
                }
            }
        }
        if (!found) {
            return Response.status(422)
                    .entity(page(name, "No device or site has this name."))
                    .build();
        }
        return Response.seeOther(URI.create("/invented-faults")).build();
    }

    private TemplateInstance page(String entered, String wrong) {
        List<Row> rows = new ArrayList<>();
        faults().forEach(faults -> addRows(faults, rows));
        rows.sort((a, b) -> Boolean.compare(b.byHand, a.byHand));
        List<Choice> choices = Arrays.stream(Fault.values())
                .map(f -> new Choice(f.name(), FaultWords.of(f)))
                .toList();
        return Templates.faults(rows.subList(0, Math.min(MOST, rows.size())), choices, hour(), entered, wrong);
    }

    private Hour hour() {
        Instant now = clock.instant();
        return new Hour(faults().stream()
                .flatMap(faults -> faults.programme().turns(now).stream())
                .map(turn -> act(turn, now))
                .toList());
    }

    private static Act act(Programme.Turn turn, Instant now) {
        boolean running = turn.running(now);
        Duration left = Duration.between(now, running ? turn.ends() : turn.begins());
        return new Act(
                turn.item().where(),
                FaultWords.of(turn.item().fault()),
                running,
                FaultWords.in(left),
                turn.item().minutes() + " min");
    }

    private void addRows(Faults faults, List<Row> rows) {
        for (DemoDevice device : faults.fleet().devices()) {
            Set<Fault> byHand = faults.handSwitched(device);
            for (Fault fault : faults.of(device, clock.millis())) {
                String site = faults.fleet().siteOf(device).name();
                rows.add(new Row(device.name(), site, fault.name(), FaultWords.of(fault), byHand.contains(fault)));
            }
        }
    }

    private static List<DemoDevice> named(DemoFleet fleet, String name) {
        if (name.equalsIgnoreCase(EVERYTHING)) {
            return fleet.devices();
        }
        List<DemoDevice> devices = fleet.devices().stream()
                .filter(device -> device.name().equalsIgnoreCase(name))
                .toList();
        return devices.isEmpty()
                ? fleet.sites().stream()
                        .filter(site -> site.name().equalsIgnoreCase(name))
                        .map(DemoSite::devices)
                        .findFirst()
                        .orElse(List.of())
                : devices;
    }

    private List<Faults> faults() {
        List<Faults> faults = demo.faults();
        if (faults.isEmpty()) {
            throw new NotFoundException();
        }
        return faults;
    }
}
