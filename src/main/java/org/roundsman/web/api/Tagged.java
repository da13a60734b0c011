package org.roundsman.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.EntityTag;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * Answers with an entity tag (RFC 9110, section 8.8.3): the beginning of the SHA-256 of what is entered about a thing, so
 * that figures which change by themselves do not change it.
 */
@ApplicationScoped
class Tagged {

    private static final int LENGTH = 16;

    private final ObjectMapper json;
    private final RoutingContext context;

    Tagged(ObjectMapper json, RoutingContext context) {
        this.json = json;
        this.context = context;
    }

    /**
     * The thing with its tag.
     *
     * @param entered what can be changed about it
     */
    <T> RestResponse<T> ok(T thing, ApiBody entered) {
        return RestResponse.ResponseBuilder.ok(thing).tag(tag(entered)).build();
    }

    /** The same for a thing that was made just now and stands at that address. */
    <T> RestResponse<T> created(String address, T thing, ApiBody entered) {
        return RestResponse.ResponseBuilder.<T>create(RestResponse.Status.CREATED)
                .location(URI.create(address))
                .entity(thing)
                .tag(tag(entered))
                .build();
    }

    /**
     * Goes on when the request has no If-Match, or one that names this state.
     *
     * @throws ProblemException when the thing was changed meanwhile
     */
    void requireUnchanged(ApiBody entered) {
        String wanted = context.request().getHeader("If-Match");
        if (wanted == null || wanted.strip().equals("*")) {
            return;
        }
        String now = "\"" + tag(entered).getValue() + "\"";
        if (Arrays.stream(wanted.split(",")).map(String::strip).noneMatch(now::equals)) {
            throw new ProblemException(ProblemKind.CHANGED_MEANWHILE, "Its entity tag is " + now + " now.");
        }
    }

    private EntityTag tag(ApiBody entered) {
        try {
            byte[] text = json.writeValueAsString(entered).getBytes(StandardCharsets.UTF_8);
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text);
            return new EntityTag(HexFormat.of().formatHex(hash, 0, LENGTH / 2));
        } catch (JsonProcessingException | NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // records of plain values, and every Java platform has SHA-256
        }
    }
}
