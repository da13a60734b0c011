package org.roundsman.catalogue;

import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.InputCheck;

/**
 * A firmware line as entered.
 *
 * @param name unique without regard to case
 * @param scheme null where none was chosen, which is refused
 * @param pattern regular expression with at least one group, with PATTERN only; see {@link VersionPattern}
 */
public record FirmwareLineDraft(String name, FirmwareLine.Scheme scheme, String pattern, String note) {

    /** What is entered about it now. */
    public static FirmwareLineDraft of(FirmwareLine line) {
        return new FirmwareLineDraft(line.name, line.scheme, line.pattern, line.note);
    }

    /** What is wrong with it by itself, by field; empty when nothing is. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    void check(InputCheck check) {
        check.text("name", name, 1, 120);
        check.that("scheme", scheme != null, "choose how its versions are compared");
        check.text("note", note, 0, 2000);
        if (scheme == FirmwareLine.Scheme.PATTERN) {
            Optional<String> fault = VersionPattern.fault(pattern);
            check.that("pattern", fault.isEmpty(), fault.orElse(""));
        } else {
            check.that(
                    "pattern", pattern.isEmpty(), "only a line that is compared by a pattern has one; leave it empty");
        }
    }
}
