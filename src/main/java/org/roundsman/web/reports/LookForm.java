package org.roundsman.web.reports;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.dispatch.BrandDraft;
import org.roundsman.reports.ReportLook;

/** What the form of a look sent, as text, without the file of the logo. */
record LookForm(
        @RestForm String name,
        @RestForm String colour,
        @RestForm String lines,
        @RestForm String dropLogo) {

    LookForm {
        name = Asked.text(name);
        colour = Asked.text(colour).toLowerCase(Locale.ROOT);
        lines = Asked.lines(lines);
        dropLogo = Asked.text(dropLogo);
    }

    static LookForm of(ReportLook.Brand brand) {
        return new LookForm(brand.name(), brand.colour(), String.join("\n", brand.lines()), "");
    }

    /** @param logo a new one, or empty */
    BrandDraft draft(Optional<byte[]> logo) {
        List<String> each =
                lines.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
        return new BrandDraft(name, colour, logo, Asked.ticked(dropLogo), each);
    }
}
