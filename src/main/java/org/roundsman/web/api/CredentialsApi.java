package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.FleetHold;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** SNMP credentials. Secrets go in and never come out. */
@Path("/api/v1/credentials")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Credentials")
class CredentialsApi {

    private final Credentials credentials;
    private final CredentialReach reach;
    private final FleetHold hold;
    private final Tagged tagged;

    CredentialsApi(Credentials credentials, CredentialReach reach, FleetHold hold, Tagged tagged) {
        this.credentials = credentials;
        this.reach = reach;
        this.hold = hold;
        this.tagged = tagged;
    }

    @GET
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists credentials, without their secrets")
    public RestResponse<Listing<CredentialJson>> listCredentials(UriInfo address, @BeanParam Paging paging) {
        Map<Long, Long> usage = credentials.usage();
        Stream<CredentialJson> all = reach.visible().map(one -> CredentialJson.of(one, usage.getOrDefault(one.id, 0L)));
        return Listing.of(address, paging, paging.cut(all, CredentialJson::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Adds credentials, to be tried after those of the same owner")
    public RestResponse<CredentialJson> addCredentials(CredentialJson.Entry entry) {
        reach.requireOwner(entry);
        Credential made = reach.find(credentials.add(entry.draft()).id);
        return tagged.created("/api/v1/credentials/" + made.id, json(made), CredentialJson.Entry.of(made));
    }

    @GET
    @Path("{credential}")
    @Needs(TokenScope.READ)
    @Operation(summary = "Shows credentials, without their secrets")
    public RestResponse<CredentialJson> showCredentials(@RestPath long credential) {
        Credential found = reach.find(credential);
        return tagged.ok(json(found), CredentialJson.Entry.of(found));
    }

    @PATCH
    @Path("{credential}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Operation(summary = "Changes credentials; secrets that are left out stay")
    public RestResponse<CredentialJson> changeCredentials(
            @RestPath long credential,
            @RequestBody(content = @Content(schema = @Schema(implementation = CredentialJson.Entry.class)))
                    MergePatch changes) {
        hold.during(FleetHold.Thing.CREDENTIAL, credential, () -> {
            CredentialJson.Entry now = CredentialJson.Entry.of(reach.findOwn(credential));
            tagged.requireUnchanged(now);
            CredentialJson.Entry wanted = changes.onto(now);
            reach.requireOwner(wanted);
            credentials.change(credential, wanted.draft());
        });
        return showCredentials(credential);
    }

    @DELETE
    @Path("{credential}")
    @Operation(summary = "Removes credentials that nothing uses")
    public void removeCredentials(@RestPath long credential) {
        hold.during(FleetHold.Thing.CREDENTIAL, credential, () -> {
            tagged.requireUnchanged(CredentialJson.Entry.of(reach.findOwn(credential)));
            credentials.remove(credential);
        });
    }

    @POST
    @Path("{credential}/earlier")
    @Operation(summary = "Lets credentials be tried one place earlier")
    public RestResponse<CredentialJson> tryCredentialsEarlier(@RestPath long credential) {
        return moved(credentials.moveUp(reach.findOwn(credential).id).id);
    }

    @POST
    @Path("{credential}/later")
    @Operation(summary = "Lets credentials be tried one place later")
    public RestResponse<CredentialJson> tryCredentialsLater(@RestPath long credential) {
        return moved(credentials.moveDown(reach.findOwn(credential).id).id);
    }

    private RestResponse<CredentialJson> moved(long id) {
        return showCredentials(id);
    }

    private CredentialJson json(Credential credential) {
        return CredentialJson.of(credential, credentials.users(credential.id));
    }
}
