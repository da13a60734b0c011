package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
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
        Element table = all(section, "tbody").get(0);
        return all(table, "tr").size();
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

    @Test
    void ofManyOutagesTheLongestAreListedAndTheRestAddedUp() throws Exception {
        List<Outage> many = Stream.iterate(0, i -> i + 1)
                .limit(47)
                .map(i -> later(full.outages().get(0), i))
                .toList();
        Element outages = section(read(document.fragment(with(many), look(Locale.ENGLISH, true, 1))), "outages");
        assertThat(rows(outages)).isEqualTo(20);
        // the 27 shortest last 1 to 27 minutes
        assertThat(outages.getTextContent()).contains("and 27 shorter ones, 6 hrs, 18 mins altogether");
    }

    /** The same outage on another day, {@code i + 1} minutes long. */
    private static Outage later(Outage one, int i) {
        Instant from = one.from().plusSeconds(3600L * i);
        Instant to = from.plusSeconds(60L * (i + 1));
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
                java.time.Duration.between(from, to),
                1,
                one.people(),
                one.personMinutes(),
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
