package org.roundsman.web.catalogue;

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
import java.util.Arrays;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.catalogue.FirmwareLineDraft;
import org.roundsman.catalogue.FirmwareLines;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Model;
import org.roundsman.people.Role;
import org.roundsman.web.edit.Entry;
import org.roundsman.web.edit.Saving;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The families of firmware. */
@Path("/firmware-lines")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class LinePages {

    private final FirmwareLines lines;
    private final Visitor visitor;

    LinePages(FirmwareLines lines, Visitor visitor) {
        this.lines = lines;
        this.visitor = visitor;
    }

    /** What the form sent. */
    record Form(
            @RestForm String name,
            @RestForm String scheme,
            @RestForm String pattern,
            @RestForm String note) {

        static Form of(FirmwareLine line) {
            return new Form(line.name, line.scheme.name(), line.pattern, line.note);
        }

        FirmwareLineDraft draft() {
            return new FirmwareLineDraft(
                    Entry.text(name).strip(),
                    Arrays.stream(FirmwareLine.Scheme.values())
                            .filter(one -> one.name().equals(scheme))
                            .findFirst()
                            .orElse(null),
                    Entry.text(pattern).strip(),
                    Entry.text(note).strip());
        }

        public List<Option> schemes() {
            return Option.of(
                            "",
                            Arrays.asList(FirmwareLine.Scheme.values()),
                            FirmwareLine.Scheme::name,
                            FirmwareLine.Scheme::word,
                            Entry.text(scheme))
                    .stream()
                    .skip(1)
                    .toList();
        }
    }

    /** A line with the models that take it. */
    record Listed(FirmwareLine line, List<Model> models) {}

    @CheckedTemplate(basePath = "catalogue")
    static class Templates {
        private Templates() {}

        static native TemplateInstance lines(List<Listed> lines, Form form, Faults faults, boolean keeps);

        static native TemplateInstance line(Listed listed, Form form, Faults faults);
    }

    @GET
    public TemplateInstance lines() {
        return list(new Form("", FirmwareLine.Scheme.DOTTED.name(), "", ""), Faults.NONE);
    }

    private TemplateInstance list(Form form, Faults faults) {
        boolean keeps = visitor.person().role().keepsCatalogue();
        return Templates.lines(lines.all().stream().map(this::listed).toList(), form, faults, keeps);
    }

    private Listed listed(FirmwareLine line) {
        return new Listed(line, lines.modelsOf(line.id));
    }

    @POST
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response add(@BeanParam Form form) {
        return Saving.of(
                new Entry(), () -> "/firmware-lines#line-" + lines.add(form.draft()).id, faults -> list(form, faults));
    }

    @GET
    @Path("{id}")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public TemplateInstance line(@RestPath long id) {
        FirmwareLine line = find(id);
        return Templates.line(listed(line), Form.of(line), Faults.NONE);
    }

    @POST
    @Path("{id}")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response change(@RestPath long id, @BeanParam Form form) {
        Listed now = listed(find(id));
        return Saving.of(
                new Entry(),
                () -> "/firmware-lines#line-" + lines.change(id, form.draft()).id,
                faults -> Templates.line(now, form, faults));
    }

    @POST
    @Path("{id}/remove")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response remove(@RestPath long id) {
        Listed now = listed(find(id));
        try {
            lines.remove(id);
            return Response.seeOther(URI.create("/firmware-lines")).build();
        } catch (InputRejected e) {
            return Response.status(409)
                    .entity(Templates.line(now, Form.of(now.line()), new Faults(e.faults())))
                    .build();
        }
    }

    private FirmwareLine find(long id) {
        return lines.find(id).orElseThrow(NotFoundException::new);
    }
}
