package org.roundsman.reports.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.roundsman.reports.RandomReport;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Catalogues;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The pictures of a report, read back as XML. */
class ReportChartsTest {

    private static final Catalogue WORDS = Catalogues.load("").get(Locale.ENGLISH);

    private final Report full = ReportExample.full();

    private static Element read(String svg) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)))
                .getDocumentElement();
    }

    private static List<Element> all(Element svg, String name) {
        NodeList found = svg.getElementsByTagNameNS("http://www.w3.org/2000/svg", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static List<String> texts(Element svg) {
        return all(svg, "text").stream().map(Element::getTextContent).toList();
    }

    private List<Picture> pictures(Report report) {
        List<Picture> pictures = new ArrayList<>();
        CalendarChart.of(report, WORDS).ifPresent(pictures::add);
        TimelineChart.of(report, WORDS).ifPresent(pictures::add);
        WeekChart.of(report, WORDS).ifPresent(pictures::add);
        RadioChart.of(report, WORDS).ifPresent(pictures::add);
        return pictures;
    }

    /** A page's policy allows no style within; a PDF's maker takes the description from an attribute. */
    @Test
    void picturesCarryTheirLookAndTheirWords() throws Exception {
        List<Picture> pictures = pictures(full);
        assertThat(pictures).hasSize(4);
        for (Picture picture : pictures) {
            Element page = read(picture.page());
            assertThat(picture.page())
                    .doesNotContain("style=")
                    .doesNotContain("url(")
                    .doesNotContain("href");
            assertThat(page.getAttribute("role")).isEqualTo("img");
            assertThat(page.getFirstChild().getNodeName()).isEqualTo("title");
            assertThat(page.getFirstChild().getTextContent()).isNotBlank();
            assertThat(all(page, "desc").get(0).getTextContent()).hasSizeGreaterThan(40);
            assertThat(read(picture.paper()).getAttribute("alt")).contains(picture.title(), picture.description());
        }
    }

    @Test
    void picturesOfAnyReportAreWellFormedAndInTheirFrame() throws Exception {
        for (long seed = 0; seed < 60; seed++) {
            for (Picture picture : pictures(RandomReport.of(seed))) {
                Element svg = read(picture.page());
                for (Element box : all(svg, "rect")) {
                    double x = Double.parseDouble(box.getAttribute("x"));
                    double y = Double.parseDouble(box.getAttribute("y"));
                    assertThat(x).isBetween(0.0, (double) Picture.WIDTH);
                    assertThat(x + Double.parseDouble(box.getAttribute("width")))
                            .isBetween(0.0, Picture.WIDTH + 1.0);
                    assertThat(y + Double.parseDouble(box.getAttribute("height")))
                            .isBetween(0.0, picture.height() + 1.0);
                }
            }
        }
    }

    /** Of three clinics 31 days each; Hill Top came on the fifth, and on 23 October nobody looked at Canal Bridge. */
    @Test
    void theCalendarNamesEachDayAndItsFigure() throws Exception {
        Element svg = read(CalendarChart.of(full, WORDS).orElseThrow().page());
        List<String> texts = texts(svg);
        assertThat(texts).contains("Canal Bridge", "Hill Top", "Market Row");
        assertThat(texts.stream().filter("31"::equals)).hasSize(3);
        long observed = full.sites().stream()
                .flatMap(site -> site.days().stream())
                .filter(day -> day.watch().share().isPresent())
                .count();
        long figures = all(svg, "text").stream()
                .filter(text -> text.getAttribute("font-size").equals("9.5"))
                .count();
        assertThat(figures).isEqualTo(observed).isEqualTo(31 + 27 + 31 - 1);
    }

    @Test
    void aMonthWithNothingObservedIsABlankCalendar() throws Exception {
        Element svg = read(CalendarChart.of(ReportExample.nothingObserved(), WORDS)
                .orElseThrow()
                .page());
        assertThat(all(svg, "text"))
                .noneMatch(text -> text.getAttribute("font-size").equals("9.5"));
        assertThat(TimelineChart.of(ReportExample.nothingObserved(), WORDS)).isEmpty();
        assertThat(WeekChart.of(ReportExample.nothingObserved(), WORDS)).isEmpty();
        assertThat(RadioChart.of(ReportExample.nothingObserved(), WORDS)).isEmpty();
    }

    /** Relative luminance of WCAG 2.2; a darker tint is darker in grey too. */
    @Test
    void tintsTellApartInGreyAndTheirInkReads() {
        double before = 2;
        for (Tint tint : Tint.values()) {
            double fill = luminance(tint.fill);
            double ink = luminance(tint.ink);
            assertThat(fill).as(tint.name()).isLessThan(before);
            assertThat((Math.max(fill, ink) + 0.05) / (Math.min(fill, ink) + 0.05))
                    .as(tint.name())
                    .isGreaterThanOrEqualTo(4.5);
            before = fill;
        }
    }

    private static double luminance(String colour) {
        double sum = 0;
        double[] weights = {0.2126, 0.7152, 0.0722};
        for (int i = 0; i < 3; i++) {
            double share = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weights[i] * (share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    @Test
    void theBusiestRadioComesFirstWithItsFigure() throws Exception {
        List<String> texts = texts(read(RadioChart.of(full, WORDS).orElseThrow().page()));
        assertThat(texts).contains("78.4%", "70%");
        assertThat(RadioChart.worst(full).get(0).utilisation()).hasValue(78.4375);
        assertThat(texts.stream().filter(text -> text.endsWith("GHz"))).hasSize(12);
    }

    @Test
    void aShareThatIsNotWholeIsNeverDrawnAsWhole() {
        assertThat(CalendarChart.tint(1)).isEqualTo(Tint.NONE);
        assertThat(CalendarChart.tint(0.99999)).isEqualTo(Tint.FAINT);
        assertThat(CalendarChart.tint(0)).isEqualTo(Tint.DEEP);
    }

    @Test
    void scalesEndAtRoundNumbers() {
        assertThat(WeekChart.roundUp(0)).isEqualTo(1);
        assertThat(WeekChart.roundUp(12)).isEqualTo(20);
        assertThat(WeekChart.roundUp(50)).isEqualTo(50);
        assertThat(WeekChart.roundUp(51)).isEqualTo(100);
    }
}
