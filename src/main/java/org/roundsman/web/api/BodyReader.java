package org.roundsman.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.MessageBodyReader;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;

/** Reads the bodies of the API. */
@Provider
@Consumes({MediaType.APPLICATION_JSON, MergePatch.MEDIA_TYPE})
public final class BodyReader implements MessageBodyReader<Object> {

    @Override
    public boolean isReadable(Class<?> type, Type generic, Annotation[] annotations, MediaType mediaType) {
        return ApiBody.class.isAssignableFrom(type) || type == MergePatch.class;
    }

    @Override
    public Object readFrom(
            Class<Object> type,
            Type generic,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, String> headers,
            InputStream in)
            throws IOException {
        byte[] body = in.readAllBytes();
        if (body.length == 0) {
            throw new ProblemException(ProblemKind.UNREADABLE, "The body is empty.");
        }
        JsonNode tree = StrictJson.tree(body);
        return type == (Class<?>) MergePatch.class ? new MergePatch(tree) : StrictJson.as(tree, type);
    }
}
