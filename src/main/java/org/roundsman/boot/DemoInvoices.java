package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Objects;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.paper.Paper;
import org.roundsman.warranty.Purchase;

/** Small invoices as PDF, marked as invented. */
@ApplicationScoped
class DemoInvoices {

    private static final String PAGE = """
            <html lang="en" xml:lang="en">
            <head>
            <title>Invoice %1$s (invented)</title>
            <meta name="subject" content="An invented invoice for demonstration"/>
            <style>@page { size: A4; margin: 20mm; } body { font-family: Figtree; font-size: 11pt; } th { text-align: left; padding-right: 8mm; font-weight: 400; } .mark { border: 1pt solid #444; padding: 2mm 3mm; font-weight: 600; }</style>
            </head>
            <body>
            <p class="mark">Invented for demonstration: no such firm, order or payment exists.</p>
            <h1>Invoice %1$s</h1>
            <p>%2$s</p>
            <table>
            <tr><th>To</th><td>%3$s</td></tr>
            <tr><th>Order</th><td>%4$s</td></tr>
            <tr><th>Day</th><td>%5$s</td></tr>
            <tr><th>Serial number</th><td>%6$s</td></tr>
            <tr><th>Price, without tax</th><td>%7$s</td></tr>
            </table>
            </body>
            </html>
            """;

    private final Paper paper;

    @Inject
    DemoInvoices(Paper paper) {
        this.paper = paper;
    }

    byte[] of(Purchase one) {
        PurchaseDraft facts = one.facts();
        return paper.pdf(PAGE.formatted(
                escaped(facts.invoiceNumber()),
                escaped(facts.supplier()),
                escaped(one.customer()),
                escaped(facts.orderNumber()),
                Objects.toString(facts.boughtOn(), "not written down"),
                escaped(facts.serial()),
                facts.price() == null ? "not written down" : facts.price().toPlainString() + " " + facts.currency()));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
