package org.roundsman.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * A change after RFC 7396: fields that are given replace those there, null empties one, fields that are left out stay.
 * Lists are replaced as a whole.
 */
public final class MergePatch {

    public static final String MEDIA_TYPE = "application/merge-patch+json";

    private final JsonNode changes;

    MergePatch(JsonNode changes) {
        this.changes = changes;
    }

    /**
     * What is there now, with the changes laid over it.
     *
     * @throws ProblemException naming the field that is unknown, or holds what it cannot hold
     */
    @SuppressWarnings("unchecked")
    public <T extends ApiBody> T onto(T now) {
        JsonNode merged = merge(StrictJson.of(now), changes);
        return (T) StrictJson.as(merged, now.getClass());
    }

    /** RFC 7396, section 2. */
    static JsonNode merge(JsonNode target, JsonNode patch) {
        if (!patch.isObject()) {
            return patch;
        }
        ObjectNode result =
                target.isObject() ? ((ObjectNode) target).deepCopy() : JsonNodeFactory.instance.objectNode();
        BiConsumer<String, JsonNode> lay = (field, value) -> {
            if (value.isNull()) {
                result.remove(field);
            } else {
                result.set(field, merge(result.path(field), value));
            }
        };
        for (Map.Entry<String, JsonNode> field : patch.properties()) {
            lay.accept(field.getKey(), field.getValue());
        }
        return result;
    }
}
