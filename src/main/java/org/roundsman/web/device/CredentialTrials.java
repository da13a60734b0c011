package org.roundsman.web.device;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.polling.CredentialTrial;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Tries which other credentials a device lets in, and takes the ones that a person chose. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CredentialTrials {

    private final CredentialTrial trial;
    private final Devices devices;
    private final DeviceViews views;
    private final Visitor visitor;

    CredentialTrials(CredentialTrial trial, Devices devices, DeviceViews views, Visitor visitor) {
        this.trial = trial;
        this.devices = devices;
        this.views = views;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "device")
    static class Templates {
        private Templates() {}

        static native TemplateInstance tried(
                DeviceView view, CredentialTrial.Result result, String verdict, String left);
    }

    /** Changes nothing; the answer is a page of its own, since the device may take its time. */
    @POST
    @Path("devices/{id}/credentials/try")
    @Blocking
    public Uni<TemplateInstance> tryOthers(@RestPath long id, @RestForm @DefaultValue("0") String skip) {
        DeviceView view = views.view(visitor.scope(), id).orElseThrow(NotFoundException::new);
        int from = skip.matches("[0-9]{1,5}") ? Integer.parseInt(skip) : 0;
        return Uni.createFrom()
                .completionStage(trial.others(id, from))
                .map(result -> Templates.tried(view, result, verdict(result), left(result)));
    }

    private static String verdict(CredentialTrial.Result result) {
        return result.letIn()
                .map(one -> "The device lets us in with “" + one.name() + "”.")
                .orElse(
                        result.tried().isEmpty()
                                ? "There are no other credentials that may be used at this site."
                                : "The device lets us in with none of these.");
    }

    private static String left(CredentialTrial.Result result) {
        return result.left() == 0
                ? ""
                : Words.many(result.left(), "set of credentials was", "sets of credentials were") + " not tried"
                        + (result.letIn().isPresent() ? ", since this one comes first." : " yet.");
    }

    @POST
    @Path("devices/{id}/credentials")
    public Response take(@RestPath long id, @RestForm @DefaultValue("") String credentialId) {
        devices.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        if (!credentialId.matches("[0-9]{1,18}")) {
            throw new NotFoundException();
        }
        try {
            devices.useCredential(id, Long.parseLong(credentialId));
            return Response.seeOther(URI.create("/devices/" + id)).build();
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }
}
