package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.alarms.AlarmType;
import org.roundsman.people.TokenScope;
import org.roundsman.web.api.AlarmPastJson.Type;

/** The kinds of alarms. */
@Path("/api/v1/alarm-types")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Alarms")
class AlarmTypesApi {

    @GET
    @Operation(summary = "Lists the kinds of alarms that there are (RFC 8632: alarm inventory)")
    public RestResponse<Listing<Type>> listAlarmTypes(UriInfo address, @BeanParam Paging paging) {
        List<Type> found = Stream.of(AlarmType.values())
                .map(Type::of)
                .filter(type -> type.id().compareTo(paging.after) > 0)
                .sorted(Comparator.comparing(Type::id))
                .limit(paging.size() + 1L)
                .toList();
        return Listing.of(address, paging, found, Type::id);
    }
}
