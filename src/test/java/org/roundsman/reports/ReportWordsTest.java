package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Summaries of the invented reports, and languages that others add. */
class ReportWordsTest {

    private static final Path ENGLISH = Path.of("src/main/resources/report/words/en.properties");

    @TempDir
    Path folder;

    private final ReportWords words = new ReportWords(Optional::empty);

    private String text(Report report, Locale language) {
        return words.summary(report, language).stream().map(Sentence::text).collect(Collectors.joining(" "));
    }

    @Test
    void threeLanguagesAreThere() {
        assertThat(words.languages()).containsExactly(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH);
    }

    /** The line of a whole site lasted 95 minutes; October was fuller than September by 1 / 0.92. */
    @Test
    void theFullMonthIsToldInThreeLanguages() {
        Report full = ReportExample.full();
        assertThat(text(full, Locale.ENGLISH))
                .startsWith("In October 2026 your Wi-Fi was there for ")
                .contains("There were 2 outages, one of them of the whole site Canal Bridge, for 1 hour, 35 minutes.")
                .contains("That is 9% more than in the month before");
        assertThat(text(full, Locale.GERMAN))
                .startsWith("Im Oktober 2026 war Ihr WLAN in ")
                .contains("Es gab 2 Ausfälle, davon einen des ganzen Standorts Canal Bridge, für 1 Stunde, 35 Minuten.")
                .contains("Das sind 9\u00a0% mehr als im Monat davor");
        assertThat(text(full, Locale.FRENCH))
                .startsWith("En octobre 2026, votre Wi-Fi était disponible pendant ")
                .contains(
                        "Il y a eu 2 pannes, dont une de tout le site Canal Bridge, pendant 1\u00a0heure et 35 minutes.")
                .contains("C’est 9\u00a0% de plus que le mois précédent");
    }

    @Test
    void ofNothingObservedNothingIsSaidButThat() {
        List<Sentence> summary = words.summary(ReportExample.nothingObserved(), Locale.ENGLISH);
        assertThat(summary).extracting(Sentence::key).containsExactly("summary.nothing", "summary.advice");
        assertThat(summary.get(0).text()).contains("October 2026").contains("nothing of your Wi-Fi was observed");
    }

    @Test
    void aRegionTakesTheWordsOfItsLanguage() {
        assertThat(text(ReportExample.full(), Locale.forLanguageTag("de-AT"))).startsWith("Im Oktober 2026");
        assertThat(text(ReportExample.full(), Locale.forLanguageTag("it"))).startsWith("In October 2026");
    }

    @Test
    void othersMayAddALanguage() throws IOException {
        String italian = Files.readString(ENGLISH)
                .replace("formats=en-GB", "formats=it-IT")
                .replace("summary.outages.none=We saw no outage.", "summary.outages.none=Nessuna interruzione.");
        Files.writeString(folder.resolve("it.properties"), italian);
        ReportWords more = new ReportWords(() -> Optional.of(folder.toString()));
        assertThat(more.languages()).contains(Locale.ITALIAN).hasSize(4);
        assertThat(more.summary(ReportExample.full(), Locale.ITALIAN).get(0).text())
                .contains("ottobre 2026");
    }

    @Test
    void aCatalogueWithAHoleIsNotUsed() throws IOException {
        String holed = Files.readAllLines(ENGLISH).stream()
                .filter(line -> !line.startsWith("cause.CABLE="))
                .collect(Collectors.joining("\n"));
        Files.writeString(folder.resolve("it.properties"), holed);
        Files.writeString(folder.resolve("pl.properties"), broken("{count, plural, one {x}}"));
        Files.writeString(folder.resolve("es.properties"), broken("{nobody}"));
        assertThat(new ReportWords(() -> Optional.of(folder.toString())).languages())
                .containsExactly(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH);
    }

    private static String broken(String pattern) throws IOException {
        return Files.readString(ENGLISH).replace("outages.none=We saw no outage.", "outages.none=" + pattern);
    }

    @Test
    void aFolderThatIsNotThereDoesNoHarm() {
        ReportWords more =
                new ReportWords(() -> Optional.of(folder.resolve("nowhere").toString()));
        assertThat(more.languages()).hasSize(3);
    }
}
