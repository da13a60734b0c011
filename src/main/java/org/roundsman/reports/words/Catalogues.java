package org.roundsman.reports.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/** Finds catalogues: those of the program, and further ones in a folder, which win over those of the same language. */
public final class Catalogues {

    private static final Logger LOG = Logger.getLogger(Catalogues.class);
    private static final List<Locale> SHIPPED = List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH);
    private static final String ENDING = ".properties";

    private Catalogues() {}

    /**
     * All that are whole. One with a fault is left out, and the log says why.
     *
     * @param folder with files such as {@code it.properties}, or empty
     */
    public static Map<Locale, Catalogue> load(String folder) {
        Map<String, Set<String>> needed = needed();
        Map<Locale, Catalogue> all = new LinkedHashMap<>();
        for (Locale language : SHIPPED) {
            try {
                all.put(language, Catalogue.of(language, shipped(language), needed));
            } catch (CatalogueRefused e) {
                throw new IllegalStateException("The words of " + language + " are not whole: " + e.getMessage(), e);
            }
        }
        if (!folder.isBlank()) {
            further(Path.of(folder)).forEach(file -> add(all, file, needed));
        }
        return all;
    }

    private static void add(Map<Locale, Catalogue> all, Path file, Map<String, Set<String>> needed) {
        String name = file.getFileName().toString();
        Locale language = Locale.forLanguageTag(name.substring(0, name.length() - ENDING.length()));
        if (language.getLanguage().isEmpty()) {
            LOG.warnf("The catalogue of words %s is not used: its name is no language tag such as it or pt-BR", file);
            return;
        }
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            all.put(language, Catalogue.of(language, read(reader), needed));
        } catch (CatalogueRefused e) {
            LOG.warnf("The catalogue of words %s is not used. Keys at fault: %s", file, e.getMessage());
        } catch (IOException | IllegalArgumentException e) {
            LOG.warnf("The catalogue of words %s is not used, since it cannot be read: %s", file, e.getMessage());
        }
    }

    private static List<Path> further(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(ENDING))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            LOG.warnf("The folder %s with catalogues of words cannot be read: %s", folder, e.getMessage());
            return List.of();
        }
    }

    /** The keys of the English words, each with its arguments. */
    static Map<String, Set<String>> needed() {
        Map<String, Set<String>> needed = new TreeMap<>();
        shipped(Locale.ENGLISH).forEach((key, pattern) -> needed.put(key, Catalogue.arguments(pattern)));
        return needed;
    }

    static Map<String, String> shipped(Locale language) {
        String path = "report/words/" + language.toLanguageTag() + ENDING;
        try (InputStream in = Catalogues.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return read(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> read(Reader reader) throws IOException {
        Properties properties = new Properties();
        properties.load(reader);
        Map<String, String> texts = new TreeMap<>();
        properties.stringPropertyNames().forEach(key -> texts.put(key, properties.getProperty(key)));
        return texts;
    }
}
