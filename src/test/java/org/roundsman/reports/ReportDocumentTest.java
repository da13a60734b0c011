package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.roundsman.paper.Paper;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A report within a page and as a mail. */
class ReportDocumentTest {

    private static final List<String> SECTIONS = List.of(
            "summary",
            "availability",
            "outages",
            "people",
            "channels",
            "rooms",
            "equipment",
            "handling",
            "work",
            "advice",
            "methods");

    private final ReportDocument document = new ReportDocument(new ReportWords(Optional::empty), new Paper());
    private final Report full = ReportExample.full();

    static ReportLook look(Locale language, boolean costs, int revision) {
        return new ReportLook(
                language,
                ReportLook.PaperSize.A4,
                ReportLook.Brand.named("Fernhollow Networks"),
                ReportLook.Brand.named("Pebblegate Dental"),
                "A <b>word</b> & more.\n\nA second paragraph.",
                costs,
                revision,
                Instant.parse("2026-11-02T09:00:00Z"));
    }

    private static Element read(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(xml)))
                .getDocumentElement();
    }

    private static List<Element> all(Element root, String name) {
        NodeList found = root.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static Element section(Element root, String id) {
        return all(root, "section").stream()
                .filter(one -> one.getAttribute("id").equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static int rows(Element section) {
        return begins(section, 0).size();
    }

    /** What the rows of a table begin with. */
    private static List<String> begins(Element section, int table) {
        return all(all(section, "tbody").get(table), "tr").stream()
                .map(row -> all(row, "th").get(0).getTextContent())
                .toList();
    }

    @Test
    void thePartOfAPageHasItsSectionsInOrderAndNoStyle() throws Exception {
        for (Locale language : List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH)) {
            String fragment = document.fragment(full, look(language, true, 1));
            Element root = read(fragment);
            assertThat(all(root, "section"))
                    .extracting(one -> one.getAttribute("id"))
                    .isEqualTo(SECTIONS);
            assertThat(fragment)
                    .doesNotContain("style=")
                    .doesNotContain("<style")
                    .doesNotContain("<h1");
            assertThat(root.getAttribute("lang")).isEqualTo(language.toLanguageTag());
            assertThat(all(root, "svg")).hasSize(4);
        }
    }

    @Test
    void eachSentenceLeadsToASection() throws Exception {
        Element root = read(document.fragment(full, look(Locale.ENGLISH, true, 1)));
        assertThat(all(section(root, "summary"), "a"))
                .hasSizeGreaterThan(5)
                .extracting(a -> a.getAttribute("href").substring(1))
                .isSubsetOf(SECTIONS);
    }

    @Test
    void whatPeopleWriteIsNoMarkup() throws Exception {
        Element root = read(document.fragment(full, look(Locale.ENGLISH, true, 1)));
        assertThat(all(section(root, "summary"), "p"))
                .extracting(Node::getTextContent)
                .contains("A <b>word</b> & more.");
        assertThat(all(root, "b")).isEmpty();
        assertThat(document.mail(full, look(Locale.ENGLISH, true, 1), Optional.empty())
                        .html())
                .contains("A &lt;b&gt;word&lt;/b&gt; &amp; more.");
    }

    @Test
    void costsAreShownOnlyWhereTheyMay() {
        assertThat(document.fragment(full, look(Locale.ENGLISH, true, 1))).contains("£569.70", "£189.90");
        assertThat(document.fragment(full, look(Locale.GERMAN, true, 1))).contains("569,70\u00a0£");
        assertThat(document.fragment(full, look(Locale.ENGLISH, false, 1)))
                .doesNotContain("569.70")
                .doesNotContain("189.90")
                .doesNotContain("list price");
    }

    @Test
    void whatWasNotObservedIsSaid() throws Exception {
        Element root = read(document.fragment(ReportExample.nothingObserved(), look(Locale.ENGLISH, true, 1)));
        assertThat(section(root, "availability").getTextContent()).contains("Nothing was observed", "not observed");
        assertThat(section(root, "outages").getTextContent())
                .contains("cannot say")
                .doesNotContain("no outage.");
        assertThat(section(root, "people").getTextContent()).contains("No figures");
        assertThat(section(root, "channels").getTextContent()).contains("could not be measured");
    }

    /** Canal Bridge was silent on 6 October from 10:12 by its own clock, an hour ahead of UTC. */
    @Test
    void outagesStandByTheClockOfTheirSite() throws Exception {
        Element outages = section(read(document.fragment(full, look(Locale.ENGLISH, true, 1))), "outages");
        assertThat(rows(outages)).isEqualTo(2);
        assertThat(outages.getTextContent()).contains("10:12", "1 hr, 35 mins", "internet line", "all (5)");
    }

    private Element outages(List<Outage> outages) throws Exception {
        return section(read(document.fragment(with(outages), look(Locale.ENGLISH, true, 1))), "outages");
    }

    /** Those that begin first are the shortest, and the ones that met most people. */
    @Test
    void ofManyOutagesThoseWithTheGreatestImpactAreToldInFullAndEachOtherHasARow() throws Exception {
        List<Outage> many = IntStream.range(0, 38)
                .mapToObj(i -> later(i, i + 1, OptionalDouble.of(100 - i)))
                .toList();
        Element outages = outages(many);
        List<String> told = begins(outages, 0);
        assertThat(told).hasSize(10);
        assertThat(told.get(0)).contains("6 Oct", "10:12");
        assertThat(told.get(9)).contains("6 Oct", "19:12");
        List<String> others = begins(outages, 1);
        assertThat(others).as("none is lost").hasSize(28).doesNotHaveDuplicates();
        assertThat(others.get(0)).contains("6 Oct", "20:12");
        assertThat(others.get(27)).contains("7 Oct", "23:12");
        assertThat(all(outages, "h3"))
                .extracting(Node::getTextContent)
                .containsExactly("The 10 with the greatest impact", "28 more outages");
        assertThat(all(outages, "thead"))
                .extracting(head -> head.getTextContent().contains("What was done"))
                .containsExactly(true, false);
        assertThat(outages.getTextContent()).contains("28 mins", "38 mins");
    }

    /** It counts as if one person had been at each of the five access points. */
    @Test
    void anOutageOfWhichNobodyKnowsWhomItMetRanksByItsSilence() throws Exception {
        List<Outage> many = new ArrayList<>(IntStream.range(0, 20)
                .mapToObj(i -> later(i, 30, OptionalDouble.of(100 + i)))
                .toList());
        many.add(later(20, 60, OptionalDouble.empty()));
        many.add(later(21, 10, OptionalDouble.empty()));
        assertThat(begins(outages(many), 0))
                .as("5 times 60 is more than any, 5 times 10 less")
                .anyMatch(begin -> begin.contains("06:12"))
                .noneMatch(begin -> begin.contains("07:12"));
    }

    @Test
    void fewOutagesAreAllToldInOneTable() throws Exception {
        List<Outage> few = IntStream.range(0, 12)
                .mapToObj(i -> later(i, 5, OptionalDouble.empty()))
                .toList();
        Element outages = outages(few);
        assertThat(all(outages, "tbody")).hasSize(1);
        assertThat(rows(outages)).isEqualTo(12);
        assertThat(all(outages, "h3")).isEmpty();
    }

    @Test
    void beyondHundredsOfOutagesTheRestIsAddedUp() throws Exception {
        List<Outage> many = IntStream.range(0, 213)
                .mapToObj(i -> later(i, 2, OptionalDouble.of(1000 - i)))
                .toList();
        Element outages = outages(many);
        assertThat(begins(outages, 1)).hasSize(200);
        assertThat(outages.getTextContent()).contains("and 3 more, 6 mins altogether");
    }

    /** The outage of Canal Bridge, so many hours later. */
    private Outage later(int hours, int minutes, OptionalDouble personMinutes) {
        Outage one = full.outages().get(0);
        Instant from = one.from().plus(Duration.ofHours(hours));
        Instant to = from.plus(Duration.ofMinutes(minutes));
        return new Outage(
                one.siteId(),
                one.site(),
                one.zone(),
                one.cause(),
                one.what(),
                from,
                to,
                false,
                false,
                one.accessPoints(),
                one.wholeSite(),
                Duration.between(from, to).multipliedBy(one.accessPoints()),
                1,
                one.people(),
                personMinutes,
                one.noticed(),
                one.taken(),
                false,
                one.alarmId());
    }

    private Report with(List<Outage> outages) {
        return new Report(
                full.form(),
                full.subject(),
                full.asOf(),
                full.invented(),
                full.whole(),
                full.service(),
                full.crowd(),
                full.sites(),
                outages,
                full.radios(),
                full.rooms(),
                full.equipment(),
                full.handling(),
                full.work(),
                full.recommendations());
    }

    @Test
    void inventedDataIsSaidEverywhere() {
        String words = "All data is invented";
        ReportLook look = look(Locale.ENGLISH, true, 1);
        ReportMail mail = document.mail(full, look, Optional.empty());
        assertThat(List.of(document.fragment(full, look), mail.html(), mail.text()))
                .allMatch(text -> text.contains(words));
    }

    @Test
    void theMailSaysTheSameInTextAndInHtml() {
        String link = "https://roundsman.example/report-link/abc";
        for (Locale language : List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH)) {
            ReportMail mail = document.mail(full, look(language, true, 1), Optional.of(link));
            for (String text : List.of(mail.text(), mail.html())) {
                assertThat(text).contains("Canal Bridge", "Hill Top", "Market Row", "A second paragraph.", link);
            }
            assertThat(mail.html())
                    .doesNotContain("<svg")
                    .doesNotContain("<img")
                    .doesNotContain("<style");
            assertThat(mail.text()).doesNotContain("<td");
        }
        assertThat(document.mail(full, look(Locale.GERMAN, true, 2), Optional.empty())
                        .subject())
                .isEqualTo("Pebblegate Dental: Ihr WLAN-Bericht, Oktober 2026, Fassung 2");
        assertThat(document.mail(full, look(Locale.ENGLISH, true, 1), Optional.empty())
                        .html())
                .doesNotContain("href");
    }

    @Test
    void filesAreNamedByCustomerMonthAndRevision() {
        assertThat(document.fileName(full, look(Locale.ENGLISH, true, 1))).isEqualTo("pebblegate-dental-2026-10.pdf");
        assertThat(document.fileName(full, look(Locale.ENGLISH, true, 2))).isEqualTo("pebblegate-dental-2026-10-2.pdf");
        assertThat(document.fileName(named("Straße & Ærø: Łódź/..", full), look(Locale.ENGLISH, true, 1)))
                .isEqualTo("strasse-aero-lodz-2026-10.pdf");
        assertThat(document.fileName(named("雪", full), look(Locale.ENGLISH, true, 1)))
                .isEqualTo("report-2026-10.pdf");
    }

    private static Report named(String customer, Report report) {
        LocalDate from = report.subject().from();
        return new Report(
                report.form(),
                new ReportSubject(7, customer, from, report.subject().to()),
                report.asOf(),
                false,
                report.whole(),
                report.service(),
                report.crowd(),
                report.sites(),
                report.outages(),
                report.radios(),
                report.rooms(),
                report.equipment(),
                report.handling(),
                report.work(),
                report.recommendations());
    }
}
