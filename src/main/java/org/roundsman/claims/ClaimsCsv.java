package org.roundsman.claims;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Claims and spares as CSV (RFC 4180) in UTF-8. Begins with a byte order mark, by which spreadsheets know UTF-8; what they
 * would take for a formula has an apostrophe before it (OWASP ASVS 5.0, 1.2.10). No prices are in it.
 */
public final class ClaimsCsv {

    private static final String[] CLAIMS = {
        "claim",
        "state",
        "customer",
        "serial",
        "model",
        "place",
        "fault",
        "opened_utc",
        "opened_by",
        "changed_utc",
        "cover",
        "terms",
        "made_to",
        "reference",
        "shipped_on",
        "tracking",
        "new_serial"
    };

    private static final String[] SPARES = {"spare", "serial", "model", "owner", "lies", "since_utc", "purchase", "note"
    };

    private ClaimsCsv() {}

    /** Where the claims come from: those after that id, at most so many. */
    public interface Pieces {
        List<Claim> after(long id, int most);
    }

    /** Writes claims by id, piece by piece, and flushes the stream without closing it. */
    public static void claims(Pieces pieces, OutputStream out) throws IOException {
        Writer writer = writer(out);
        CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
        printer.printRecord((Object[]) CLAIMS);
        long last = 0;
        List<Claim> piece = pieces.after(last, 500);
        while (!piece.isEmpty()) {
            for (Claim claim : piece) {
                printer.printRecord((Object[]) row(claim));
                last = claim.id();
            }
            piece = pieces.after(last, 500);
        }
        writer.flush();
    }

    private static String[] row(Claim claim) {
        Claim.Known known = claim.known();
        Claim.Papers papers = claim.papers();
        return new String[] {
            String.valueOf(claim.id()),
            claim.state().word(),
            guarded(claim.customer()),
            guarded(known.serial()),
            guarded(known.model()),
            guarded(known.place()),
            guarded(known.fault()),
            claim.openedAt().toString(),
            guarded(claim.openedBy()),
            claim.changedAt().toString(),
            guarded(known.cover()),
            guarded(known.terms()),
            guarded(papers.party()),
            guarded(papers.reference()),
            papers.shippedOn().map(Object::toString).orElse(""),
            guarded(papers.tracking()),
            guarded(claim.newSerial())
        };
    }

    /** Writes spares, and flushes the stream without closing it. */
    public static void spares(List<Spare> spares, OutputStream out) throws IOException {
        Writer writer = writer(out);
        CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
        printer.printRecord((Object[]) SPARES);
        for (Spare spare : spares) {
            Unit unit = spare.unit();
            printer.printRecord(
                    String.valueOf(spare.id()),
                    guarded(unit.serial()),
                    guarded(unit.model()),
                    guarded(Optional.of(unit.customer())
                            .filter(name -> !name.isEmpty())
                            .orElse("the firm's own")),
                    guarded(spare.where()),
                    spare.since().toString(),
                    guarded(spare.purchase()),
                    guarded(spare.note()));
        }
        writer.flush();
    }

    private static Writer writer(OutputStream out) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        writer.write('\uFEFF');
        return writer;
    }

    /** An apostrophe goes before what begins like a formula, after any apostrophes that are there already. */
    static String guarded(String text) {
        int i = 0;
        while (i < text.length() && text.charAt(i) == '\'') {
            i++;
        }
        return i < text.length() && "=+-@\t\0".indexOf(text.charAt(i)) >= 0 ? "'" + text : text;
    }
}
