package org.roundsman.reports.document;

import io.quarkus.qute.RawString;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;
import org.roundsman.reports.Sentence;
import org.roundsman.reports.words.Catalogue;

/** Lays one report out: as a part of a page, as a PDF's page, and as a mail. */
public final class Layout {

    private final Ink ink;
    private final List<Sentence> summary;
    private final Pages pages;

    public Layout(Report report, ReportLook look, Catalogue words, List<Sentence> summary, Pages pages) {
        this.ink = new Ink(report, look, words);
        this.summary = summary;
        this.pages = pages;
    }

    /** XHTML for within a page of ours, with headings from the second level on. */
    public String fragment() {
        return pages.made("fragment", view(false, ""));
    }

    /** The whole page of a PDF. @param style that travels with the program */
    public String paper(String style) {
        return pages.made("paper", view(true, style + PaperStyle.of(ink)));
    }

    public ReportMail mail(String link) {
        MailView view = new MailLayout(ink, summary, link).view();
        return new ReportMail(view.subject(), view.text(), pages.made("mail", view));
    }

    private ReportView view(boolean paper, String style) {
        ReportLook look = ink.look();
        int revision = look.revision();
        String title = ink.say("title", "period", ink.period());
        return new ReportView(
                paper,
                look.language().toLanguageTag(),
                title,
                ink.say("subject", "customer", ink.report().subject().customer(), "period", ink.period()),
                sections(),
                summary,
                ink.say("remark.of", "name", look.firm().name()),
                paragraphs(look.remark()),
                revision > 1 ? ink.say("revised", "number", revision) : "",
                ink.report().invented() ? ink.say("invented") : "",
                foot(),
                face(look.firm(), look.firm().name()),
                face(look.customer(), ink.report().subject().customer()),
                new RawString(style));
    }

    private List<Section> sections() {
        Section first = ink.section("summary")
                .add(new Part("summary", "", List.of(), List.of(), List.of(), List.of()))
                .done();
        return List.of(
                first,
                AvailabilitySection.of(ink),
                OutagesSection.of(ink),
                PeopleSection.of(ink),
                ChannelsSection.of(ink),
                ChannelsSection.rooms(ink),
                EquipmentSection.of(ink),
                DealingsSections.handling(ink),
                DealingsSections.work(ink),
                AdviceSection.of(ink),
                MethodsSection.of(ink));
    }

    /** Blank lines part paragraphs. */
    static List<String> paragraphs(String remark) {
        return Arrays.stream(remark.split("\\R\\s*\\R"))
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .toList();
    }

    private String foot() {
        String revision = ink.say("foot.revision", "number", ink.look().revision());
        String customer = ink.report().subject().customer();
        String foot = String.join(" · ", ink.look().firm().name(), customer, ink.period(), revision);
        return ink.report().invented() ? foot + " · " + ink.say("invented") : foot;
    }

    /** The customer's name is the one of the report, which does not change when they are renamed. */
    private static ReportView.Face face(ReportLook.Brand brand, String name) {
        boolean pictured = brand.logo().length > 0 && brand.logoType().matches("image/(png|jpeg)");
        String logo = pictured
                ? "data:" + brand.logoType() + ";base64," + Base64.getEncoder().encodeToString(brand.logo())
                : "";
        return new ReportView.Face(name, new RawString(logo), pictured, brand.lines());
    }
}
