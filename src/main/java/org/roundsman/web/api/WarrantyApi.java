package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;

/** Warranty of units. It holds prices, so it is closed to viewers altogether. */
@Path("/api/v1/warranty")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Warranty")
class WarrantyApi {

    private final Warranties warranties;
    private final Contracts contracts;
    private final Caller caller;

    WarrantyApi(Warranties warranties, Contracts contracts, Caller caller) {
        this.warranties = warranties;
        this.contracts = contracts;
        this.caller = caller;
    }

    @GET
    @Path("units")
    @Operation(summary = "Lists units with their cover: devices by id, then purchases that stand at no device")
    public RestResponse<Listing<WarrantyJson>> listWarrantyUnits(
            UriInfo address, @BeanParam Paging paging, @BeanParam WarrantyFilter wanted) {
        Place from = Place.of(paging.after);
        List<WarrantyJson> found = wanted.search().of(warranties.all(caller.scope())).stream()
                .filter(cover -> Place.of(cover).compareTo(from) > 0)
                .sorted(Comparator.comparing(Place::of))
                .limit(paging.size() + 1L)
                .map(WarrantyJson::of)
                .toList();
        return Listing.of(address, paging, found, WarrantyJson::unit);
    }

    @GET
    @Path("contracts")
    @Operation(summary = "Lists extended contracts")
    public RestResponse<Listing<WarrantyJson.ContractJson>> listWarrantyContracts(
            UriInfo address, @BeanParam Paging paging) {
        List<WarrantyJson.ContractJson> found = paging.cut(
                contracts.all(caller.scope()).stream().map(WarrantyJson.ContractJson::of),
                WarrantyJson.ContractJson::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    /** Where a unit stands in the list. */
    private record Place(boolean purchase, long id) implements Comparable<Place> {

        static Place of(UnitCover cover) {
            return of(WarrantyJson.key(cover));
        }

        static Place of(String key) {
            if (key.isEmpty()) {
                return new Place(false, 0);
            }
            if (!key.matches("[dp][0-9]{1,17}")) {
                throw new ProblemException(Problem.refused(Map.of("after", "take it from “next” of the piece before")));
            }
            return new Place(key.charAt(0) == 'p', Long.parseLong(key.substring(1)));
        }

        @Override
        public int compareTo(Place other) {
            int kind = Boolean.compare(purchase, other.purchase);
            return kind != 0 ? kind : Long.compare(id, other.id);
        }
    }
}
