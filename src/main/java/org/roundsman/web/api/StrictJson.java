package org.roundsman.web.api;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.util.Map;

/** Reads JSON of others without guessing what they meant. */
final class StrictJson {

    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .disable(com.fasterxml.jackson.databind.SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();

    private StrictJson() {}

    /**
     * The body as a tree.
     *
     * @throws ProblemException naming line and column when it is no JSON, or no object
     */
    static JsonNode tree(byte[] body) {
        try {
            JsonNode tree = MAPPER.readTree(body);
            if (!tree.isObject()) {
                throw new ProblemException(ProblemKind.UNREADABLE, "The body must be a JSON object.");
            }
            return tree;
        } catch (JsonProcessingException e) {
            throw new ProblemException(ProblemKind.UNREADABLE, "The body is no JSON: " + place(e));
        } catch (IOException e) {
            throw new ProblemException(ProblemKind.UNREADABLE, "The body is no JSON in UTF-8.");
        }
    }

    /**
     * The tree as a record.
     *
     * @throws ProblemException naming the field that is unknown, or holds what it cannot hold
     */
    static <T> T as(JsonNode tree, Class<T> type) {
        try {
            return MAPPER.treeToValue(tree, type);
        } catch (UnrecognizedPropertyException e) {
            throw refused(e, "there is no such field");
        } catch (InvalidFormatException e) {
            throw refused(e, "“" + e.getValue() + "” is not " + wanted(e.getTargetType()));
        } catch (JsonMappingException e) {
            throw refused(e, "holds another type of value than it should");
        } catch (JsonProcessingException e) {
            throw new ProblemException(ProblemKind.UNREADABLE, "The body cannot be read: " + place(e));
        }
    }

    /** A value as a tree, to lay changes over it. */
    static JsonNode of(Object value) {
        return MAPPER.valueToTree(value);
    }

    private static String place(JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        String where = at == null ? "" : "line " + at.getLineNr() + ", column " + at.getColumnNr() + ": ";
        String what = e.getOriginalMessage().startsWith("Duplicate")
                ? "a field stands there twice."
                : "this is where it stops making sense.";
        return where + what;
    }

    private static ProblemException refused(JsonMappingException e, String reason) {
        return new ProblemException(Problem.refused(Map.of(path(e), reason)));
    }

    private static String path(JsonMappingException e) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference step : e.getPath()) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private static String wanted(Class<?> type) {
        if (Number.class.isAssignableFrom(type) || type.isPrimitive() && type != boolean.class) {
            return "a whole number in range";
        }
        if (type == java.time.LocalDate.class) {
            return "a day such as 2026-03-31";
        }
        return type == java.time.LocalTime.class ? "a time of day such as 08:30" : "a value that fits here";
    }
}
