package org.roundsman.reports.document;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.Sentence;
import org.roundsman.reports.SiteFigures;

/** The mail that a report comes with: tables in place of pictures, since many readers of mail show none. */
final class MailLayout {

    private static final int MOST = 25;

    private final Ink ink;
    private final Report report;
    private final List<Sentence> summary;
    private final String link;

    MailLayout(Ink ink, List<Sentence> summary, String link) {
        this.ink = ink;
        this.report = ink.report();
        this.summary = summary;
        this.link = link;
    }

    MailView view() {
        ReportLook look = ink.look();
        Part table = table();
        List<String> remark = Layout.paragraphs(look.remark());
        List<String> closing = new ArrayList<>(List.of(look.firm().name()));
        closing.addAll(look.firm().lines());
        int left = report.sites().size() - MOST;
        String more = left > 0 ? ink.say("more", "count", left) : "";
        String invented = report.invented() ? ink.say("invented") : "";
        return new MailView(
                subject(),
                text(table, remark, more, invented, closing),
                look.language().toLanguageTag(),
                Contrast.readable(look.firm().colour()),
                ink.say("mail.greeting"),
                intro(),
                summary,
                ink.say("remark.of", "name", look.firm().name()),
                remark,
                ink.say("mail.figures"),
                table.columns(),
                table.rows(),
                more,
                ink.say("mail.link"),
                link,
                invented,
                List.copyOf(closing));
    }

    private String subject() {
        String key = ink.look().revision() > 1 ? "mail.subject.revised" : "mail.subject";
        String customer = report.subject().customer();
        return ink.say(
                key,
                "customer",
                customer,
                "period",
                ink.period(),
                "number",
                ink.look().revision());
    }

    private String intro() {
        return ink.say("mail.intro", "period", ink.period());
    }

    private Part table() {
        Grid grid = new Grid(
                        ink.say("mail.figures"),
                        ink.say("col.site"),
                        ink.say("col.around"),
                        ink.say("col.service"),
                        ink.say("col.target"),
                        ink.say("col.met"),
                        ink.say("mail.outages"),
                        ink.say("col.coverage"))
                .numbers(1, 2, 3, 5, 6)
                .site(0, ink.onlySite());
        report.sites().stream().limit(MOST).forEach(site -> row(grid, site));
        return grid.part();
    }

    private void row(Grid grid, SiteFigures site) {
        long outages = report.outages().stream()
                .filter(outage -> outage.siteId() == site.siteId())
                .count();
        boolean observed = site.whole().share().isPresent();
        grid.row(
                site.site(),
                ink.share(site.whole().share()),
                ink.share(site.service().share()),
                ink.formats().percent(site.target(), 3),
                ink.say(site.met().map(yes -> yes ? "met.yes" : "met.no").orElse("met.unknown")),
                observed ? ink.formats().whole(outages) : ink.words().notObserved(),
                ink.share(site.whole().coverage()));
    }

    private String text(Part table, List<String> remark, String more, String invented, List<String> closing) {
        List<String> blocks = new ArrayList<>();
        blocks.add(ink.say("mail.greeting"));
        blocks.add(intro());
        blocks.add(summary.stream().map(Sentence::text).collect(Collectors.joining("\n")));
        if (!remark.isEmpty()) {
            blocks.add(ink.say("remark.of", "name", ink.look().firm().name()));
            blocks.addAll(remark);
        }
        blocks.add(ink.say("mail.figures"));
        table.rows().forEach(row -> blocks.add(lines(table.columns(), row)));
        blocks.add(more);
        blocks.add(link.isEmpty() ? "" : ink.say("mail.link") + "\n" + link);
        blocks.add(invented);
        blocks.add(String.join("\n", closing));
        return blocks.stream().filter(block -> !block.isEmpty()).collect(Collectors.joining("\n\n")) + "\n";
    }

    /** A site with its figures beneath, each behind its title; of the only one just the figures. */
    private String lines(List<Cell> columns, List<Cell> row) {
        List<String> lines = new ArrayList<>();
        String gap = row.get(0).head() ? "  " : "";
        for (int i = 0; i < row.size(); i++) {
            Cell cell = row.get(i);
            lines.add(
                    cell.head()
                            ? cell.text()
                            : gap + ink.say("joined", "one", columns.get(i).text(), "two", cell.text()));
        }
        return String.join("\n", lines);
    }
}
