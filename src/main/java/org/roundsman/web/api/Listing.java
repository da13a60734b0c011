package org.roundsman.web.api;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * One piece of a list. The next one begins after the last item of this, whatever was added or removed meanwhile.
 *
 * @param next address of the next piece; null at the end. The header Link says the same (RFC 8288)
 */
public record Listing<T>(
        List<T> items,

        @Schema(
                nullable = true,
                description = "Address of the next piece, with all that was asked for; null at the end",
                examples = "/api/v1/devices?size=100&after=417")
        String next) {

    /**
     * Cuts a piece and links to the next.
     *
     * @param found one more than wanted, where there are more
     * @param key of the item that the next piece begins after
     */
    static <T> RestResponse<Listing<T>> of(UriInfo address, Paging paging, List<T> found, Function<T, String> key) {
        boolean more = found.size() > paging.size();
        List<T> items = more ? found.subList(0, paging.size()) : found;
        if (!more) {
            return RestResponse.ok(new Listing<>(items, null));
        }
        String last = key.apply(items.get(items.size() - 1));
        String query = address.getRequestUriBuilder()
                .replaceQueryParam("after", last)
                .build()
                .getRawQuery();
        String next = address.getRequestUri().getRawPath() + "?" + query;
        return RestResponse.ResponseBuilder.ok(new Listing<>(items, next))
                .header(HttpHeaders.LINK, "<" + next + ">; rel=\"next\"")
                .build();
    }
}
