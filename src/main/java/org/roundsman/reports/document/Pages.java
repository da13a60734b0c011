package org.roundsman.reports.document;

import io.quarkus.qute.Engine;
import io.quarkus.qute.HtmlEscaper;
import io.quarkus.qute.ReflectionValueResolver;
import io.quarkus.qute.Variant;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The templates of reports, with an engine of their own: the command line and tests use them without a container. Thread-safe. */
public final class Pages {

    private static final List<String> NAMES = List.of("part", "sections", "fragment", "paper", "mail");

    private final Engine engine;

    public Pages() {
        engine = Engine.builder()
                .addDefaults()
                .addValueResolver(new ReflectionValueResolver())
                .addResultMapper(new HtmlEscaper(List.of(Variant.TEXT_HTML)))
                .build();
        for (String name : NAMES) {
            String id = "report/" + name;
            engine.putTemplate(id, engine.parse(text(id), Variant.forContentType(Variant.TEXT_HTML), id));
        }
    }

    /** A template with its view under the name {@code report}. */
    String made(String name, Object view) {
        return engine.getTemplate("report/" + name).data("report", view).render();
    }

    private static String text(String id) {
        String path = "templates/" + id + ".html";
        try (InputStream in = Pages.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
