package org.roundsman.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.zip.CRC32C;

/** The files that pages load. */
@ApplicationScoped
class Assets {

    private static final List<String> FILES = List.of(
            "type.css",
            "layout.css",
            "parts.css",
            "pictures.css",
            "sweeps.css",
            "alarms.css",
            "triage.css",
            "report.css",
            "reports.css",
            "live.js",
            "ticks.js",
            "triage.js",
            "reports.js");

    private final String version = fingerprint();

    String version() {
        return version;
    }

    private static String fingerprint() {
        CRC32C sum = new CRC32C();
        FILES.forEach(file -> sum.update(content(file)));
        return Long.toHexString(sum.getValue());
    }

    private static byte[] content(String file) {
        String path = "META-INF/resources/assets/" + file;
        try (InputStream in = Thread.currentThread().getContextClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
