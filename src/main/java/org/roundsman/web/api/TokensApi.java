package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.HeldToken;
import org.roundsman.people.PersonalTokens;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;
import org.roundsman.people.UsedToken;

/** The caller, and the caller's own tokens. New ones are made on the page, by a person: a token makes no token. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Tokens")
class TokensApi {

    private final PersonalTokens tokens;
    private final Caller caller;

    TokensApi(PersonalTokens tokens, Caller caller) {
        this.tokens = tokens;
        this.caller = caller;
    }

    /** Whose program asks, and what it may do. */
    @Schema(name = "Me")
    record MeJson(
            @Schema(examples = "wren") String name,
            @Schema(examples = "Wren Tolliver") String shownName,
            @Schema(examples = "technician") String role,

            @Schema(nullable = true, description = "The one customer whose data can be seen; null for all")
            Long customerId,

            @Schema(examples = "stock list") String token,
            @Schema(examples = "[\"read\"]") List<String> scopes) {}

    /** A personal token; never the token itself. */
    @Schema(name = "Token")
    record TokenJson(
            @Schema(examples = "4") long id,
            @Schema(examples = "stock list") String name,
            @Schema(examples = "[\"read\"]") List<String> scopes,

            @Schema(nullable = true, description = "The one customer that it is narrowed to")
            Long customerId,

            @Schema(examples = "2026-03-02T09:15:00Z") Instant createdAt,
            @Schema(examples = "2026-05-31T09:15:00Z") Instant expiresAt,
            @Schema(nullable = true) Instant revokedAt,

            @Schema(nullable = true, description = "Exact to about a minute")
            Instant usedAt,

            @Schema(examples = "192.0.2.17") String usedFrom) {

        static TokenJson of(HeldToken token) {
            return new TokenJson(
                    token.id(),
                    token.name(),
                    words(token.scopes()),
                    token.customerId().orElse(null),
                    token.createdAt(),
                    token.expiresAt(),
                    token.revokedAt().orElse(null),
                    token.usedAt().orElse(null),
                    token.usedFrom());
        }
    }

    @GET
    @Path("me")
    @Operation(summary = "Says whose token this is, and what it may do")
    public MeJson showMe() {
        SignedIn person = caller.person();
        UsedToken token = caller.token();
        return new MeJson(
                person.name(),
                person.shownName(),
                person.role().word(),
                person.customerId().orElse(null),
                token.name(),
                words(token.scopes()));
    }

    @GET
    @Path("tokens")
    @Operation(summary = "Lists the person's own tokens, without the tokens themselves")
    public RestResponse<Listing<TokenJson>> listTokens(UriInfo address, @BeanParam Paging paging) {
        Stream<TokenJson> all = tokens.of(caller.person().accountId()).stream().map(TokenJson::of);
        return Listing.of(address, paging, paging.cut(all, TokenJson::id), one -> String.valueOf(one.id()));
    }

    /** Any token may end itself and its person's others: it can do less afterwards, not more. */
    @DELETE
    @Path("tokens/{token}")
    @Operation(summary = "Revokes one of the person's own tokens")
    public void revokeToken(@RestPath long token) {
        boolean own = tokens.of(caller.person().accountId()).stream().anyMatch(one -> one.id() == token);
        if (!own || !tokens.revoke(caller.person(), token)) {
            throw new NotFoundException();
        }
    }

    private static List<String> words(java.util.Set<TokenScope> scopes) {
        return scopes.stream().sorted().map(TokenScope::word).toList();
    }
}
