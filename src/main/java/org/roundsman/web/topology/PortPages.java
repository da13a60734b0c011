package org.roundsman.web.topology;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.topology.PortWord;
import org.roundsman.topology.PortWords;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The switch port of a device, set, kept and taken back by hand. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class PortPages {

    private static final Pattern PLACE = Pattern.compile("([0-9]{1,18}):(-?[0-9]{1,9})?");

    private final Devices devices;
    private final Topology topology;
    private final PortWords words;
    private final WiringLines lines;
    private final Visitor visitor;

    PortPages(Devices devices, Topology topology, PortWords words, WiringLines lines, Visitor visitor) {
        this.devices = devices;
        this.topology = topology;
        this.words = words;
        this.lines = lines;
        this.visitor = visitor;
    }

    /**
     * What the page shows.
     *
     * @param found where it hangs by now
     * @param keep the choice that keeps what was found; empty when there is nothing to keep
     */
    record PortView(
            Device device,
            WiringLines.Place found,
            String keep,
            Optional<PortWord> word,
            List<PortChoices.Group> groups,
            String note) {}

    @CheckedTemplate(basePath = "topology")
    static class Templates {
        private Templates() {}

        static native TemplateInstance port(PortView view, Faults faults);
    }

    @GET
    @Path("devices/{id}/port")
    public TemplateInstance port(@RestPath long id) {
        return form(id, null, null, Faults.NONE);
    }

    @POST
    @Path("devices/{id}/port")
    public Response set(@RestPath long id, @BeanParam PortForm form) {
        Device device = device(id);
        String place = Objects.toString(form.place, "");
        String note = Objects.toString(form.note, "");
        Matcher matcher = PLACE.matcher(place);
        if (!matcher.matches()) {
            return refused(form(id, place, note, Faults.of("place", "choose a port of the list")));
        }
        try {
            OptionalInt port =
                    matcher.group(2) == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(matcher.group(2)));
            words.set(visitor.scope(), id, Long.parseLong(matcher.group(1)), port, note);
        } catch (InputRejected e) {
            return refused(form(id, place, note, new Faults(e.faults())));
        }
        return back(device);
    }

    @POST
    @Path("devices/{id}/port/take-back")
    public Response takeBack(@RestPath long id) {
        Device device = device(id);
        words.takeBack(visitor.scope(), id);
        return back(device);
    }

    private static Response back(Device device) {
        return Response.seeOther(URI.create("/devices/" + device.id)).build();
    }

    private static Response refused(TemplateInstance form) {
        return Response.status(422).entity(form).build();
    }

    private TemplateInstance form(long id, String place, String note, Faults faults) {
        CustomerScope scope = visitor.scope();
        Device device = device(id);
        SiteWiring wiring = topology.wiring(scope, device.site.id).orElseThrow(NotFoundException::new);
        Optional<PortWord> word = words.of(scope, id);
        String now = wiring.tree().node(id).map(PortPages::value).orElse("");
        return Templates.port(
                new PortView(
                        device,
                        lines.of(id),
                        word.isPresent() ? "" : now,
                        word,
                        PortChoices.of(wiring, id, place == null ? now : place),
                        note == null ? word.map(PortWord::note).orElse("") : note),
                faults);
    }

    private static String value(TreeNode node) {
        return node.place().parentId().isEmpty()
                ? ""
                : node.place().parentId().getAsLong() + ":"
                        + (node.place().port().isPresent() ? node.place().port().getAsInt() : "");
    }

    private Device device(long id) {
        return devices.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
