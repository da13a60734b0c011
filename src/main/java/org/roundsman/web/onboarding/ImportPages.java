package org.roundsman.web.onboarding;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.roundsman.fleet.FleetImport;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRights;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun;
import org.roundsman.fleet.ImportUnreadable;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Visitor;

/** Uploads with their dry runs, which are applied or thrown away. */
@Path("/onboarding/imports")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ImportPages {

    private static final int SIZE = 25;

    private final FleetImport imports;
    private final Landing landing;
    private final Visitor visitor;

    ImportPages(FleetImport imports, Landing landing, Visitor visitor) {
        this.imports = imports;
        this.landing = landing;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "onboarding")
    static class Templates {
        private Templates() {}

        static native TemplateInstance run(RunView run, String fault);

        static native TemplateInstance progress(RunView run);
    }

    @POST
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    public Response upload(@RestForm(FileUpload.ALL) List<FileUpload> files, @RestForm String windows) {
        boolean elseWindows = "yes".equals(windows);
        try {
            ImportRun run = imports.check(rights(), account(), Uploads.read(files), elseWindows);
            return Response.seeOther(at(run.id())).build();
        } catch (ImportUnreadable e) {
            return unread(e.faults(), elseWindows);
        } catch (InputRejected e) {
            String reason = e.faults().values().iterator().next();
            return unread(List.of(new ImportUnreadable.Fault("", "Not read: " + reason + ".")), elseWindows);
        }
    }

    private Response unread(List<ImportUnreadable.Fault> faults, boolean elseWindows) {
        return Response.status(422)
                .entity(OnboardingPages.Templates.onboarding(landing.view(visitor, faults, elseWindows)))
                .build();
    }

    @GET
    @Path("{id}")
    public TemplateInstance run(@RestPath long id, @RestQuery String outcome, @RestQuery String page) {
        Filter filter = outcome == null ? first(id) : Filter.of(outcome);
        return Templates.run(view(id, filter, Filter.page(page)), "");
    }

    /** What is refused is what somebody has to look at. */
    private Filter first(long id) {
        return imports.find(account(), id)
                .filter(run -> run.count(ImportOutcome.REFUSED) > 0)
                .map(run -> Filter.of(ImportOutcome.REFUSED))
                .orElse(Filter.ALL);
    }

    private RunView view(long id, Filter filter, int page) {
        ImportRun run = imports.find(account(), id).orElseThrow(NotFoundException::new);
        Page<ImportRow> rows = imports.rows(account(), id, filter.outcome(), filter.moved(), page, SIZE);
        boolean refused = filter.outcome().equals(Optional.of(ImportOutcome.REFUSED)) && page == 1;
        return RunView.of(run, rows, filter, refused ? imports.reasons(account(), id) : List.of());
    }

    /** The part that refreshes itself while work goes on; when it has ended, the browser loads the whole page. */
    @GET
    @Path("{id}/progress")
    public Response progress(@RestPath long id) {
        RunView run = view(id, Filter.ALL, 1);
        Response.ResponseBuilder answer = Response.ok(Templates.progress(run));
        return run.working()
                ? answer.build()
                : answer.header("HX-Refresh", "true").build();
    }

    @POST
    @Path("{id}/apply")
    public Response apply(@RestPath long id) {
        return done(id, () -> imports.apply(rights(), account(), id).id());
    }

    @POST
    @Path("{id}/check")
    public Response checkAgain(@RestPath long id) {
        return done(id, () -> imports.checkAgain(rights(), account(), id).id());
    }

    @POST
    @Path("{id}/discard")
    public Response discard(@RestPath long id) {
        try {
            imports.discard(account(), id);
            return Response.seeOther(URI.create("/onboarding")).build();
        } catch (InputRejected e) {
            return refused(id, e);
        }
    }

    private Response done(long id, LongSupplier work) {
        try {
            return Response.seeOther(at(work.getAsLong())).build();
        } catch (InputRejected e) {
            return refused(id, e);
        }
    }

    private Response refused(long id, InputRejected e) {
        if (e.faults().containsKey("id")) {
            throw new NotFoundException(e);
        }
        String fault = "Not done: " + e.faults().values().iterator().next() + ".";
        return Response.status(409)
                .entity(Templates.run(view(id, Filter.ALL, 1), fault))
                .build();
    }

    private static URI at(long id) {
        return URI.create("/onboarding/imports/" + id);
    }

    private ImportRights rights() {
        return new ImportRights(visitor.scope(), visitor.person().role().keepsCatalogue());
    }

    private long account() {
        return visitor.person().accountId();
    }
}
