package org.roundsman.reports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Catalogues;
import org.roundsman.reports.words.Summary;
import org.roundsman.reports.words.WordsConfig;

/** In which languages reports are written, and their summary. Thread-safe. */
@ApplicationScoped
public class ReportWords {

    private final Map<Locale, Catalogue> catalogues;

    @Inject
    public ReportWords(WordsConfig config) {
        catalogues = Catalogues.load(config.folder().orElse(""));
    }

    /** English first; each has a whole catalogue. */
    public List<Locale> languages() {
        return List.copyOf(catalogues.keySet());
    }

    /** The report in at most 120 words; only what its figures say. */
    public List<Sentence> summary(Report report, Locale language) {
        return new Summary(report, catalogue(language)).sentences();
    }

    /** The words of a language; of the language without its region where only that is there, else English. */
    Catalogue catalogue(Locale language) {
        Catalogue exact = catalogues.get(language);
        if (exact != null) {
            return exact;
        }
        Catalogue near = catalogues.get(Locale.forLanguageTag(language.getLanguage()));
        return near == null ? catalogues.get(Locale.ENGLISH) : near;
    }
}
