package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.roundsman.paper.Paper;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Where a customer has one site, people need not read its name in each row of each table; programs do. */
class ReportOfOneSiteTest {

    private static final String SITE = "Canal Bridge";

    private final ReportDocument document = new ReportDocument(new ReportWords(Optional::empty), new Paper());
    private final Report full = ReportExample.full();
    private final Report one = ofOneSite();

    /** The full report, as if everything in it had been at its first site. */
    private Report ofOneSite() {
        SiteFigures site = full.sites().get(0);
        assertThat(site.site()).isEqualTo(SITE);
        return new Report(
                full.form(),
                full.subject(),
                full.asOf(),
                full.invented(),
                full.whole(),
                full.service(),
                full.crowd(),
                List.of(site),
                full.outages().stream()
                        .filter(outage -> outage.siteId() == site.siteId())
                        .toList(),
                full.radios().stream()
                        .filter(radio -> radio.siteId() == site.siteId())
                        .toList(),
                full.rooms().stream().map(room -> at(site, room)).toList(),
                equipment(),
                full.handling(),
                work(SITE),
                full.recommendations());
    }

    private static Room at(SiteFigures site, Room room) {
        return new Room(
                site.siteId(),
                site.site(),
                room.deviceId(),
                room.device(),
                room.place(),
                room.reason(),
                room.radio(),
                room.figure(),
                room.time(),
                room.times());
    }

    private Equipment equipment() {
        Equipment all = full.equipment();
        return new Equipment(
                all.devices(),
                all.firmware(),
                all.versions(),
                all.warranty(),
                all.ending().stream()
                        .filter(ending -> ending.site().equals(SITE))
                        .toList(),
                all.pastSupport(),
                all.endingCost(),
                all.unpriced());
    }

    private WorkDone work(String site) {
        WorkDone work = full.work();
        return new WorkDone(
                work.planned().stream()
                        .map(each -> new WorkDone.PlannedWork(
                                site, each.device(), each.title(), each.zone(), each.from(), each.to()))
                        .toList(),
                work.replaced().stream()
                        .map(each -> new WorkDone.Replaced(
                                site, each.device(), each.oldSerial(), each.newSerial(), each.zone(), each.at()))
                        .toList(),
                work.upgraded().stream()
                        .map(each -> new WorkDone.Upgraded(
                                site, each.device(), each.old(), each.fresh(), each.zone(), each.at()))
                        .toList());
    }

    private Report withWorkAt(String site) {
        return new Report(
                one.form(),
                one.subject(),
                one.asOf(),
                one.invented(),
                one.whole(),
                one.service(),
                one.crowd(),
                one.sites(),
                one.outages(),
                one.radios(),
                one.rooms(),
                one.equipment(),
                one.handling(),
                work(site),
                one.recommendations());
    }

    /** The texts of all cells of all tables of a page. */
    private List<String> cells(Report report, Locale language) throws Exception {
        String fragment = document.fragment(report, ReportDocumentTest.look(language, false, 1));
        Element root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(fragment)))
                .getDocumentElement();
        List<String> texts = new ArrayList<>();
        for (String name : List.of("th", "td")) {
            NodeList found = root.getElementsByTagName(name);
            for (int i = 0; i < found.getLength(); i++) {
                texts.add(found.item(i).getTextContent());
            }
        }
        return texts;
    }

    @Test
    void noTableOfThePageNamesTheSite() throws Exception {
        assertThat(cells(full, Locale.ENGLISH)).contains("Site", SITE);
        assertThat(cells(one, Locale.ENGLISH))
                .doesNotContain("Site", SITE)
                .contains("In service hours", "Cause", "internet line", "Average", "Measured", "Evidence");
        assertThat(cells(one, Locale.GERMAN)).doesNotContain("Standort", SITE).contains("Ursache");
        assertThat(cells(one, Locale.FRENCH)).doesNotContain("Site", SITE).contains("Cause");
    }

    /** In English the word begins with a capital only where it heads a column. */
    @Test
    void norDoesOneOfThePdf() throws Exception {
        assertThat(pages(full)).containsPattern("\\bSite\\b");
        assertThat(pages(one)).doesNotContainPattern("\\bSite\\b").contains("internet line");
    }

    private String pages(Report report) throws Exception {
        ReportLook look = ReportDocumentTest.look(Locale.ENGLISH, false, 1);
        try (PDDocument pdf = Loader.loadPDF(document.pdf(report, look))) {
            return new PDFTextStripper().getText(pdf);
        }
    }

    /** Of nothing observed the summary names no site either. */
    @Test
    void theMailSaysTheFiguresWithoutTheSite() {
        ReportLook look = ReportDocumentTest.look(Locale.ENGLISH, false, 1);
        ReportMail mail = document.mail(ReportExample.nothingObserved(), look, Optional.empty());
        assertThat(mail.text())
                .doesNotContain(SITE)
                .contains("Key figures\n\nAround the clock: not observed\nIn service hours: not observed\n");
        assertThat(mail.html()).doesNotContain(SITE).doesNotContain(">Site<").contains(">In service hours<");
        assertThat(document.mail(full, look, Optional.empty()).text())
                .contains("\n\nCanal Bridge\n  Around the clock: ");
    }

    @Test
    void aRowOfAnotherSiteKeepsTheColumn() throws Exception {
        assertThat(cells(withWorkAt("Old Mill"), Locale.ENGLISH)).contains("Site", "Old Mill");
    }

    @Test
    void programsGetItInEachRow() {
        for (String key : List.of("sites", "days", "outages", "radios", "rooms")) {
            ReportTable table = ReportTables.find(one, key).orElseThrow();
            assertThat(table.columns()).as(key).startsWith("site");
            assertThat(table.rows()).as(key).isNotEmpty().allMatch(row -> row.get(0)
                    .equals(SITE));
        }
    }
}
