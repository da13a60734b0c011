package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.paper.Paper;
import org.roundsman.reports.ReportLook.PaperSize;

/** The PDF of the full report, read back by PDFBox and held against the report; figures are written here by java.text. */
class ReportPaperTest {

    private final ReportDocument document = new ReportDocument(new ReportWords(Optional::empty), new Paper());
    private final Report full = ReportExample.full();

    private static ReportLook look(Locale language, PaperSize size, ReportLook.Brand firm) {
        return new ReportLook(
                language,
                size,
                firm,
                ReportLook.Brand.named("Pebblegate Dental"),
                "The new access point hangs since Monday.",
                true,
                1,
                Instant.parse("2026-11-02T09:00:00Z"));
    }

    private PDDocument made(Locale language, PaperSize size) throws IOException {
        return Loader.loadPDF(document.pdf(full, look(language, size, ReportLook.Brand.named("Fernhollow Networks"))));
    }

    private static String text(PDDocument pdf) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        return plain(stripper.getText(pdf));
    }

    /** Spaces of any width count alike: our fonts have no narrow ones. */
    private static String plain(String text) {
        return text.replaceAll("[\\s\\u00a0\\u202f]+", " ");
    }

    private static String share(double share, Locale locale) {
        NumberFormat percent = NumberFormat.getPercentInstance(locale);
        percent.setMinimumFractionDigits(share < 1 ? 2 : 0);
        percent.setMaximumFractionDigits(2);
        percent.setRoundingMode(RoundingMode.DOWN);
        return plain(percent.format(share));
    }

    @ParameterizedTest
    @CsvSource({"en, en-GB", "de, de-DE", "fr, fr-FR"})
    void theFiguresOfTheReportStandInThePages(String language, String customs) throws IOException {
        Locale locale = Locale.forLanguageTag(customs);
        try (PDDocument pdf = made(Locale.forLanguageTag(language), PaperSize.A4)) {
            String text = text(pdf);
            assertThat(text)
                    .contains(share(full.whole().share().getAsDouble(), locale))
                    .contains(share(full.service().share().getAsDouble(), locale))
                    .contains(share(full.whole().coverage().getAsDouble(), locale));
            for (SiteFigures site : full.sites()) {
                assertThat(text)
                        .contains(site.site())
                        .contains(share(site.whole().share().getAsDouble(), locale))
                        .contains(share(site.service().share().getAsDouble(), locale));
            }
            NumberFormat figure = NumberFormat.getInstance(locale);
            figure.setMaximumFractionDigits(1);
            assertThat(text)
                    .contains(plain(
                            figure.format(full.crowd().clients().orElseThrow().all())))
                    .contains(plain(figure.format(78.4375)))
                    .contains(
                            "TMR-22-001204",
                            "10:12",
                            "Fernhollow Networks",
                            "The new access point hangs since Monday.");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "fr"})
    void itIsTaggedAndNamedInItsLanguage(String language) throws IOException {
        try (PDDocument pdf = made(Locale.forLanguageTag(language), PaperSize.A4)) {
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo(language);
            assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(pdf.getDocumentCatalog().getStructureTreeRoot().getKids())
                    .isNotEmpty();
            assertThat(pdf.getDocumentInformation().getTitle()).contains("2026");
            assertThat(pdf.getDocumentInformation().getSubject()).contains("Pebblegate Dental");
            List<String> bookmarks = new ArrayList<>();
            for (PDOutlineItem item :
                    pdf.getDocumentCatalog().getDocumentOutline().children()) {
                bookmarks.add(item.getTitle());
            }
            assertThat(bookmarks).hasSize(11).allMatch(title -> !title.isBlank());
        }
    }

    @Test
    void everyFontIsInside() throws IOException {
        try (PDDocument pdf = made(Locale.FRENCH, PaperSize.A4)) {
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).isEmbedded())
                            .as(page.getResources().getFont(name).getName())
                            .isTrue();
                }
            }
        }
    }

    /** ISO 216: 210 by 297 mm; ANSI/ASME Y14.1, size A: 8.5 by 11 inches. */
    @ParameterizedTest
    @CsvSource({"A4, 595.28, 841.89", "LETTER, 612, 792"})
    void pagesHaveTheirSizeAndAreTwoToSix(PaperSize size, float width, float height) throws IOException {
        for (Locale language : List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH)) {
            try (PDDocument pdf = made(language, size)) {
                assertThat(pdf.getNumberOfPages()).isBetween(2, 6);
                for (PDPage page : pdf.getPages()) {
                    PDRectangle box = page.getMediaBox();
                    assertThat(box.getWidth()).isCloseTo(width, within(1f));
                    assertThat(box.getHeight()).isCloseTo(height, within(1f));
                }
            }
        }
    }

    @Test
    void everyPageIsNumbered() throws IOException {
        try (PDDocument pdf = made(Locale.GERMAN, PaperSize.A4)) {
            int pages = pdf.getNumberOfPages();
            for (int page = 1; page <= pages; page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                assertThat(plain(stripper.getText(pdf)))
                        .contains("Seite " + page + " von " + pages)
                        .contains("Pebblegate Dental · Oktober 2026 · Fassung 1")
                        .contains("Alle Daten sind");
            }
        }
    }

    @Test
    void aLogoStandsOnTheFirstPage() throws IOException {
        BufferedImage logo = new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB);
        logo.setRGB(3, 3, Color.RED.getRGB());
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(logo, "png", png);
        ReportLook.Brand firm =
                new ReportLook.Brand("Fernhollow Networks", "#008000", png.toByteArray(), "image/png", List.of());
        try (PDDocument pdf = Loader.loadPDF(document.pdf(full, look(Locale.ENGLISH, PaperSize.A4, firm)))) {
            PDPage first = pdf.getPage(0);
            List<PDImageXObject> pictures = new ArrayList<>();
            for (COSName name : first.getResources().getXObjectNames()) {
                if (first.getResources().getXObject(name) instanceof PDImageXObject picture) {
                    pictures.add(picture);
                }
            }
            assertThat(pictures).anyMatch(picture -> picture.getWidth() == 40 && picture.getHeight() == 20);
        }
    }

    @Test
    void reportsOfAnyKindBecomePages() throws IOException {
        for (long seed = 0; seed < 12; seed++) {
            Report report = RandomReport.of(seed);
            ReportLook look = look(Locale.ENGLISH, PaperSize.LETTER, ReportLook.Brand.named("Fernhollow Networks"));
            try (PDDocument pdf = Loader.loadPDF(document.pdf(report, look))) {
                assertThat(text(pdf)).contains("Pebblegate Dental").contains("How the figures are made");
            }
        }
        ReportLook look = look(Locale.ENGLISH, PaperSize.A4, ReportLook.Brand.named("Fernhollow Networks"));
        try (PDDocument pdf = Loader.loadPDF(document.pdf(ReportExample.nothingObserved(), look))) {
            assertThat(text(pdf)).contains("Nothing was observed").contains("not observed");
        }
    }
}
