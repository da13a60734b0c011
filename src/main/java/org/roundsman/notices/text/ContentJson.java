package org.roundsman.notices.text;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Content as it is stored, and as a webhook's receiver gets it. */
public final class ContentJson {

    private static final ObjectMapper JSON = new ObjectMapper();

    private ContentJson() {}

    public static String stored(Content content) {
        return write(content);
    }

    /**
     * @throws IllegalStateException when that is no stored content
     */
    public static Content read(String stored) {
        try {
            return JSON.readValue(stored, Content.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a message of the outbox cannot be read: " + e.getOriginalMessage(), e);
        }
    }

    /**
     * The body for a webhook; the same at each attempt.
     *
     * @param id of the message, the same at each attempt
     * @param follows id of the first message about the same matter
     */
    public static String body(String id, Optional<String> follows, NoticeKind kind, Instant at, Content content) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("id", id);
        follows.ifPresent(first -> body.put("follows", first));
        body.put("event", kind.word());
        body.put("at", at.toString());
        body.put("subject", content.subject());
        body.put("text", content.lead());
        Map<String, String> to = new LinkedHashMap<>();
        content.links().forEach(link -> to.put(link.words(), link.address()));
        body.put("links", to);
        body.put("facts", content.facts());
        return write(body);
    }

    private static String write(Object value) {
        try {
            return JSON.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("texts, numbers and lists of them can be written", e);
        }
    }
}
