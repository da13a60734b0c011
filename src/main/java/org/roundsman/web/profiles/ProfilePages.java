package org.roundsman.web.profiles;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.profiles.Consequences;
import org.roundsman.profiles.ProfileUse;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.profiles.TextDifference;
import org.roundsman.profiles.WrittenProfile;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;
import org.roundsman.web.page.Faults;

/** Profiles, their versions, and which are in use. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ProfilePages {

    private final WrittenProfiles written;
    private final ProfilesInUse inUse;
    private final ProfileUse use;
    private final Writer writer;

    ProfilePages(WrittenProfiles written, ProfilesInUse inUse, ProfileUse use, Writer writer) {
        this.written = written;
        this.inUse = inUse;
        this.use = use;
        this.writer = writer;
    }

    /** All profiles, and what keeps some from being used. */
    record Listed(List<ProfileLine> written, List<ProfileLine> others, List<ProfileFault> leftOut, boolean writes) {}

    /** One profile with its versions. */
    record Shown(WrittenProfile profile, List<VersionLine> versions, boolean writes) {
        public String state() {
            return profile.inUse().map(n -> "version " + n + " is in use").orElse("not in use");
        }

        public boolean used() {
            return profile.inUse().isPresent();
        }
    }

    /** One line of a text. */
    record NumberedLine(int number, String text) {}

    @CheckedTemplate(basePath = "profiles")
    static class Templates {
        private Templates() {}

        static native TemplateInstance profiles(Listed list);

        static native TemplateInstance profile(Shown shown);

        static native TemplateInstance version(Consequences what, List<NumberedLine> lines, Shown shown, Faults wrong);

        static native TemplateInstance differences(Shown shown, int from, int to, List<TextDifference.Line> lines);

        static native TemplateInstance builtin(String name, String origin, List<NumberedLine> lines, boolean writes);
    }

    @GET
    @Path("profiles")
    public TemplateInstance all() {
        ProfileSet set = inUse.current();
        List<ProfileLine> mine = written.all().stream()
                .map(p -> new ProfileLine(
                        p.name(),
                        "/profiles/" + p.id(),
                        p.inUse().isPresent() ? set.about(p.name()) : "",
                        Origin.WRITTEN.word(),
                        p.inUse().map(n -> "version " + n + " in use").orElse("not in use")
                                + (p.inUse().equals(java.util.Optional.of(p.latest()))
                                        ? ""
                                        : ", latest is version " + p.latest()),
                        p.author() + ", " + Times.of(p.at())))
                .toList();
        List<ProfileLine> others = new ArrayList<>();
        ProfileSet base = inUse.withoutWritten();
        for (String name : base.names()) {
            boolean replaced =
                    set.text(name).filter(t -> t.origin() == Origin.WRITTEN).isPresent();
            String state = replaced ? "replaced by the one written here" : "in use";
            String origin = base.text(name).map(t -> t.origin().word()).orElse("");
            others.add(new ProfileLine(name, "/profiles/built-in/" + name, base.about(name), origin, state, ""));
        }
        return Templates.profiles(new Listed(mine, others, inUse.leftOut(), writer.writes()));
    }

    @GET
    @Path("profiles/{id}")
    public TemplateInstance profile(@RestPath long id) {
        return Templates.profile(shown(id));
    }

    @GET
    @Path("profiles/{id}/versions/{number}")
    public TemplateInstance version(@RestPath long id, @RestPath int number) {
        return version(id, number, Faults.NONE);
    }

    private TemplateInstance version(long id, int number, Faults wrong) {
        Shown shown = shown(id);
        ProfileVersion version = written.version(id, number).orElseThrow(NotFoundException::new);
        return Templates.version(use.consequences(id, number), numbered(version.text()), shown, wrong);
    }

    @GET
    @Path("profiles/{id}/differences")
    public TemplateInstance differences(
            @RestPath long id, @RestQuery @DefaultValue("1") int from, @RestQuery @DefaultValue("1") int to) {
        ProfileVersion before = written.version(id, from).orElseThrow(NotFoundException::new);
        ProfileVersion after = written.version(id, to).orElseThrow(NotFoundException::new);
        return Templates.differences(shown(id), from, to, TextDifference.between(before.text(), after.text()));
    }

    @GET
    @Path("profiles/built-in/{name}")
    public TemplateInstance builtin(@RestPath String name) {
        ProfileText text = inUse.withoutWritten().text(name).orElseThrow(NotFoundException::new);
        return Templates.builtin(name, text.origin().word(), numbered(text.text()), writer.writes());
    }

    @POST
    @Path("profiles/{id}/use")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response use(@RestPath long id, @RestForm @DefaultValue("0") int version, @RestForm String accept) {
        try {
            use.use(id, version, "yes".equals(accept));
            return Response.seeOther(URI.create("/profiles/" + id)).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return Response.status(422)
                    .entity(version(id, version, new Faults(e.faults())))
                    .build();
        }
    }

    @POST
    @Path("profiles/{id}/take-out")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response takeOut(@RestPath long id) {
        shown(id);
        written.takeOut(id);
        return Response.seeOther(URI.create("/profiles/" + id)).build();
    }

    private Shown shown(long id) {
        WrittenProfile profile = written.find(id).orElseThrow(NotFoundException::new);
        return new Shown(profile, VersionLine.of(profile, written.versions(id)), writer.writes());
    }

    private static List<NumberedLine> numbered(String text) {
        List<NumberedLine> lines = new ArrayList<>();
        text.lines().forEach(line -> lines.add(new NumberedLine(lines.size() + 1, line)));
        return lines;
    }
}
