package org.roundsman.web.reports;

import java.util.Arrays;
import java.util.Optional;
import org.roundsman.reports.ReportLook;

/** Sizes of paper out of forms. */
final class Papers {

    private Papers() {}

    static Optional<ReportLook.PaperSize> find(String name) {
        return Arrays.stream(ReportLook.PaperSize.values())
                .filter(one -> one.name().equals(Asked.text(name)))
                .findFirst();
    }
}
