package org.roundsman.reports.words;

import io.smallrye.config.ConfigMapping;
import java.util.Optional;

/** Keys under {@code roundsman.report-words}. */
@ConfigMapping(prefix = "roundsman.report-words")
public interface WordsConfig {

    /** Folder with further catalogues of words, such as {@code it.properties}. */
    Optional<String> folder();
}
