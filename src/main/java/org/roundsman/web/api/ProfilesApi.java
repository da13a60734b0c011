package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.profiles.ProfileUse;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;

/** Profiles: how devices of a maker are read. */
@Path("/api/v1/profiles")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Profiles")
class ProfilesApi {

    private final WrittenProfiles written;
    private final ProfilesInUse inUse;
    private final ProfileUse use;
    private final Caller caller;

    ProfilesApi(WrittenProfiles written, ProfilesInUse inUse, ProfileUse use, Caller caller) {
        this.written = written;
        this.inUse = inUse;
        this.use = use;
        this.caller = caller;
    }

    /** A profile that nobody wrote here. */
    @Schema(name = "BuiltInProfile")
    record BuiltIn(
            @Schema(examples = "host") String name,

            @Schema(examples = "Any device that keeps to the standards")
            String about,

            @Schema(description = "shipped, or folder: one that the settings name", examples = "shipped")
            String origin,

            @Schema(description = "YAML", examples = "profile: host")
            String text) {

        static BuiltIn of(String name, String about, ProfileText text) {
            return new BuiltIn(name, about, Choice.word(text.origin()), text.text());
        }
    }

    /** One of them in lists. */
    @Schema(name = "BuiltInProfileLine")
    record BuiltInLine(
            @Schema(examples = "host") String name,

            @Schema(examples = "Any device that keeps to the standards")
            String about,

            @Schema(examples = "shipped") String origin,

            @Schema(description = "One of the same name that was written here is used in its place")
            boolean replaced) {}

    @GET
    @Operation(summary = "Lists the profiles that people wrote here")
    public RestResponse<Listing<ProfileJson>> listProfiles(UriInfo address, @BeanParam Paging paging) {
        Stream<ProfileJson> all = written.all().stream().map(one -> ProfileJson.of(one, List.of()));
        return Listing.of(address, paging, paging.cut(all, ProfileJson::id), one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{profile}")
    @Operation(summary = "Shows a profile with its versions")
    public ProfileJson showProfile(@RestPath long profile) {
        return written.find(profile)
                .map(found -> ProfileJson.of(found, written.versions(profile)))
                .orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("{profile}/versions/{number}")
    @Operation(summary = "Shows a version of a profile with its text and faults")
    public ProfileJson.Version showProfileVersion(@RestPath long profile, @RestPath int number) {
        return written.version(profile, number).map(ProfileJson.Version::of).orElseThrow(NotFoundException::new);
    }

    /** Names devices of all customers. */
    @GET
    @Path("{profile}/versions/{number}/consequences")
    @Operation(summary = "Shows what putting a version of a profile in use would bring about")
    public ConsequencesJson showProfileConsequences(@RestPath long profile, @RestPath int number) {
        caller.requireEveryone();
        return ConsequencesJson.of(use.consequences(profile, number));
    }

    @GET
    @Path("built-in")
    @Operation(summary = "Lists the profiles that came with the program or from folders, by name")
    public RestResponse<Listing<BuiltInLine>> listBuiltInProfiles(UriInfo address, @BeanParam Paging paging) {
        List<BuiltInLine> found = inUse.withoutWritten().names().stream()
                .filter(name -> name.compareTo(paging.after) > 0)
                .sorted()
                .limit(paging.size() + 1L)
                .map(this::line)
                .toList();
        return Listing.of(address, paging, found, BuiltInLine::name);
    }

    private BuiltInLine line(String name) {
        ProfileSet base = inUse.withoutWritten();
        Origin used = inUse.current().text(name).map(ProfileText::origin).orElse(null);
        return new BuiltInLine(
                name,
                base.about(name),
                base.text(name).map(text -> Choice.word(text.origin())).orElse(""),
                used == Origin.WRITTEN);
    }

    @GET
    @Path("built-in/{name}")
    @Operation(summary = "Shows a profile that came with the program or from a folder")
    public BuiltIn showBuiltInProfile(@RestPath String name) {
        return inUse.withoutWritten()
                .text(name)
                .map(text -> BuiltIn.of(name, inUse.withoutWritten().about(name), text))
                .orElseThrow(NotFoundException::new);
    }
}
