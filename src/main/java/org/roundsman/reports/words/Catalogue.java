package org.roundsman.reports.words;

import com.ibm.icu.text.MessageFormat;
import com.ibm.icu.text.MessagePattern;
import com.ibm.icu.util.ULocale;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** The words of one language: patterns of ICU by key. Thread-safe. */
public final class Catalogue {

    /** Key of the BCP 47 tag by whose customs figures, dates and money are written. */
    static final String FORMATS = "formats";

    /** A unit that is cut short, such as "Min.", ends a sentence by itself. */
    private static final Pattern DOUBLED_STOP = Pattern.compile("(?<!\\.)\\.\\.(?!\\.)");

    private final Locale language;
    private final Formats formats;
    private final Map<String, MessageFormat> patterns;
    private final Map<String, String> texts;

    private Catalogue(Locale language, String tag, Map<String, MessageFormat> patterns, Map<String, String> texts) {
        this.language = language;
        this.formats = new Formats(tag);
        this.patterns = patterns;
        this.texts = texts;
    }

    /**
     * Reads patterns.
     *
     * @param needed the arguments that each key may name; a key that is missing here is left out
     * @throws CatalogueRefused when keys are missing, or patterns cannot be read or name what nobody says
     */
    static Catalogue of(Locale language, Map<String, String> given, Map<String, Set<String>> needed)
            throws CatalogueRefused {
        ULocale locale = ULocale.forLanguageTag(given.getOrDefault(FORMATS, language.toLanguageTag()));
        Map<String, String> faults = new TreeMap<>();
        Map<String, MessageFormat> patterns = new HashMap<>();
        Map<String, String> texts = new HashMap<>();
        needed.forEach((key, arguments) -> {
            Optional<String> fault = fault(given.getOrDefault(key, ""), arguments);
            if (fault.isPresent()) {
                faults.put(key, fault.get());
                return;
            }
            MessageFormat pattern = new MessageFormat(given.get(key), locale);
            patterns.put(key, pattern);
            if (arguments.isEmpty()) {
                texts.put(key, pattern.format(Map.of()));
            }
        });
        if (!faults.isEmpty()) {
            throw new CatalogueRefused(faults);
        }
        return new Catalogue(language, locale.toLanguageTag(), patterns, texts);
    }

    private static Optional<String> fault(String pattern, Set<String> arguments) {
        if (pattern.isBlank()) {
            return Optional.of("missing");
        }
        try {
            Set<String> unknown = arguments(pattern);
            unknown.removeAll(arguments);
            new MessageFormat(pattern, ULocale.ROOT);
            return unknown.isEmpty() ? Optional.empty() : Optional.of("names " + unknown);
        } catch (IllegalArgumentException e) {
            return Optional.of("cannot be read: " + e.getMessage());
        }
    }

    /** The names of all arguments of a pattern, also of those within choices. */
    static Set<String> arguments(String pattern) {
        MessagePattern parts = new MessagePattern(pattern);
        Set<String> names = new TreeSet<>();
        for (int i = 0; i < parts.countParts(); i++) {
            MessagePattern.Part part = parts.getPart(i);
            if (part.getType() == MessagePattern.Part.Type.ARG_NAME
                    || part.getType() == MessagePattern.Part.Type.ARG_NUMBER) {
                names.add(parts.getSubstring(part));
            }
        }
        return names;
    }

    public Locale language() {
        return language;
    }

    public Formats formats() {
        return formats;
    }

    /**
     * The text of a key.
     *
     * @param pairs name and value in turn; texts stand as they are, numbers choose plural forms
     * @throws IllegalArgumentException when there is no such key
     */
    public String say(String key, Object... pairs) {
        String fixed = texts.get(key);
        if (fixed != null) {
            return fixed;
        }
        MessageFormat pattern = patterns.get(key);
        if (pattern == null) {
            throw new IllegalArgumentException("no words for " + key);
        }
        Map<String, Object> values = new HashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            values.put((String) pairs[i], pairs[i + 1]);
        }
        MessageFormat own = (MessageFormat) pattern.clone();
        return DOUBLED_STOP.matcher(own.format(values)).replaceAll(".");
    }

    /** What a report says in place of a figure that nobody took. */
    public String notObserved() {
        return say("not.observed");
    }
}
