package org.roundsman.web.profiles;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.Proposal;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileText;
import org.roundsman.web.page.Faults;

/** Writing and changing profiles. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class EditorPages {

    private final WrittenProfiles written;
    private final Editing editing;

    EditorPages(WrittenProfiles written, Editing editing) {
        this.written = written;
        this.editing = editing;
    }

    @CheckedTemplate(basePath = "profiles")
    static class Templates {
        private Templates() {}

        static native TemplateInstance editor(EditorView view);

        static native TemplateInstance checked(Checked checked);

        static native TemplateInstance tried(Tried tried, String untried);
    }

    @GET
    @Path("profiles/new")
    public TemplateInstance fresh(@RestQuery @DefaultValue("") String copy, @RestQuery @DefaultValue("0") long walk) {
        String text = copy.isEmpty()
                ? Proposal.skeleton("my-maker", editing.objectId(walk), "access point")
                : editing.inUse()
                        .withoutWritten()
                        .text(copy)
                        .map(ProfileText::text)
                        .orElseThrow(NotFoundException::new);
        return Templates.editor(editing.view(EditorForm.fresh(text, walk)));
    }

    @GET
    @Path("profiles/{id}/edit")
    public TemplateInstance edit(@RestPath long id, @RestQuery @DefaultValue("0") long walk) {
        List<ProfileVersion> versions = written.versions(id);
        ProfileVersion latest = versions.stream().findFirst().orElseThrow(NotFoundException::new);
        return Templates.editor(editing.view(new EditorForm(
                String.valueOf(id),
                latest.text(),
                "",
                String.valueOf(latest.number()),
                walk == 0 ? "" : String.valueOf(walk))));
    }

    @POST
    @Path("profiles")
    public Response add(@BeanParam EditorForm form) {
        return saved(form, () -> written.add(form.lines(), form.noted()));
    }

    @POST
    @Path("profiles/{id}")
    public Response save(@RestPath long id, @BeanParam EditorForm form) {
        written.find(id).orElseThrow(NotFoundException::new);
        return saved(form, () -> written.save(id, form.base(), form.lines(), form.noted()));
    }

    private Response saved(EditorForm form, java.util.function.Supplier<ProfileVersion> save) {
        try {
            ProfileVersion version = save.get();
            String address = "/profiles/" + version.profileId() + "/versions/" + version.number();
            return Response.seeOther(URI.create(address)).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return Response.status(422)
                    .entity(Templates.editor(editing.refused(form, new Faults(e.faults()))))
                    .build();
        }
    }

    /** Everything that is wrong with the text: a part of the page, or without scripts the whole of it. */
    @POST
    @Path("profiles/check")
    public TemplateInstance check(@BeanParam EditorForm form, @HeaderParam("HX-Request") String part) {
        return part == null
                ? Templates.editor(editing.view(form))
                : Templates.checked(Checked.of(form.lines(), editing.inUse()));
    }

    /** What the text makes of a stored walk: a part of the page, or without scripts the whole of it. */
    @POST
    @Path("profiles/try")
    public TemplateInstance tryIt(@BeanParam EditorForm form, @HeaderParam("HX-Request") String part) {
        EditorView view = editing.tried(form);
        return part == null ? Templates.editor(view) : Templates.tried(view.tried(), view.untried());
    }
}
