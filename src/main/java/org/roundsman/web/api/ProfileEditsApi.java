package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.profiles.ProfileUse;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.WrittenProfiles;

/** Profiles, written and put in use. They are no single customer's. */
@Path("/api/v1/profiles")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.PROFILES)
@Tag(name = "Profiles")
class ProfileEditsApi {

    private final WrittenProfiles written;
    private final ProfileUse use;
    private final Caller caller;

    ProfileEditsApi(WrittenProfiles written, ProfileUse use, Caller caller) {
        this.written = written;
        this.use = use;
        this.caller = caller;
    }

    @POST
    @Path("check")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Says what is wrong with the text of a profile, and keeps nothing")
    public ProfileJson.Check checkProfile(ProfileJson.CheckEntry entry) {
        return new ProfileJson.Check(WrittenProfiles.check(ProfileJson.lines(entry.text())).stream()
                .map(ProfileJson.Fault::of)
                .toList());
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Saves a new profile as its version 1; one with faults is kept and cannot be used")
    public RestResponse<ProfileJson.Version> addProfile(ProfileJson.Entry entry) {
        caller.requireEveryone();
        return created(written.add(
                ProfileJson.lines(entry.text()), Given.text(entry.note()).strip()));
    }

    @POST
    @Path("{profile}/versions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Saves the next version of a profile; the one in use stays in use")
    public RestResponse<ProfileJson.Version> addProfileVersion(@RestPath long profile, ProfileJson.VersionEntry entry) {
        caller.requireEveryone();
        return created(written.save(
                profile,
                Given.or(entry.basedOn(), 0),
                ProfileJson.lines(entry.text()),
                Given.text(entry.note()).strip()));
    }

    @POST
    @Path("{profile}/use")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Puts a version of a profile in use, or goes back to an earlier one")
    public ProfileJson useProfile(@RestPath long profile, ProfileJson.UseEntry entry) {
        caller.requireEveryone();
        use.use(profile, Given.or(entry.version(), 0), Given.or(entry.accept(), false));
        return answer(profile);
    }

    @POST
    @Path("{profile}/take-out")
    @Operation(summary = "Takes a profile out of use; a built-in one of the same name comes back")
    public ProfileJson takeOutProfile(@RestPath long profile) {
        caller.requireEveryone();
        written.takeOut(profile);
        return answer(profile);
    }

    private static RestResponse<ProfileJson.Version> created(ProfileVersion version) {
        String address = "/api/v1/profiles/" + version.profileId() + "/versions/" + version.number();
        return RestResponse.ResponseBuilder.<ProfileJson.Version>create(RestResponse.Status.CREATED)
                .location(URI.create(address))
                .entity(ProfileJson.Version.of(version))
                .build();
    }

    private ProfileJson answer(long profile) {
        return written.find(profile)
                .map(found -> ProfileJson.of(found, written.versions(profile)))
                .orElseThrow(NotFoundException::new);
    }
}
