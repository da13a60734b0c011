package org.roundsman.web.profiles;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Map;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/**
 * A walk as text: pasted, or a file.
 *
 * @param laterOf id of the walk that it is the later one of, or empty
 */
record WalkForm(
        @RestForm String name,
        @RestForm String customerId,
        @RestForm String blank,
        @RestForm String text,
        @RestForm FileUpload file,
        @RestForm String laterOf) {

    /** What stands in the file, or was pasted where there is none. */
    String walk() {
        if (file != null && file.size() > 0) {
            try {
                return new String(Files.readAllBytes(file.uploadedFile()), StandardCharsets.UTF_8);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return text == null ? "" : text;
    }

    String shownName() {
        String entered = name == null ? "" : name.strip();
        return entered.isEmpty() && file != null && file.fileName() != null ? file.fileName() : entered;
    }

    long later() {
        return number(laterOf);
    }

    long customer() {
        return number(customerId);
    }

    private static long number(String text) {
        return text != null && text.matches("\\d{1,15}") ? Long.parseLong(text) : 0;
    }

    /** What to show again. A long walk is not sent back: the person still has it. */
    Map<String, String> entered() {
        String pasted = text == null || text.length() > 100_000 ? "" : text;
        return Map.of(
                "name", name == null ? "" : name, "customerId", customerId == null ? "" : customerId, "text", pasted);
    }
}
