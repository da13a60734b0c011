package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.dispatch.store.BrandTable;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.work.Logo;
import org.roundsman.dispatch.work.Looks;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.fleet.InputCheck;
import org.roundsman.fleet.InputRejected;
import org.roundsman.reports.ReportLook.Brand;

/** How the firm and its customers are presented in reports. A report that was sent keeps what it was sent with. */
@ApplicationScoped
public class Brands {

    private static final int LONGEST_NAME = 100;
    private static final int MOST_LINES = 8;
    private static final int LONGEST_LINE = 120;

    private final Parts parts;

    @Inject
    Brands(Parts parts) {
        this.parts = parts;
    }

    /** The firm's own. */
    public Brand firm() {
        return new Looks(parts.store().rows()).firm();
    }

    /** A customer's; its name where none is kept. */
    public Brand of(long customerId) {
        String name = new PlanTable(parts.store().rows()).customer(customerId).orElse("");
        return new Looks(parts.store().rows()).customer(customerId, name);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public void saveFirm(BrandDraft draft) {
        save(OptionalLong.empty(), draft);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken; {@code customer} when the customer is not there
     */
    public void save(long customerId, BrandDraft draft) {
        save(OptionalLong.of(customerId), draft);
    }

    private void save(OptionalLong customerId, BrandDraft draft) {
        InputCheck check = new InputCheck();
        check.text("name", draft.name(), 1, LONGEST_NAME);
        String colour = draft.colour() == null ? "" : draft.colour().strip().toLowerCase(Locale.ROOT);
        check.that(
                "colour", colour.isEmpty() || colour.matches("#[0-9a-f]{6}"), "such as #1b6e53, or nothing for ours");
        List<String> lines = draft.lines().stream()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        check.that("lines", lines.size() <= MOST_LINES, "at most " + MOST_LINES + " lines");
        lines.forEach(line -> check.text("lines", line, 0, LONGEST_LINE));
        Logo logo = draft.logo().map(octets -> Logo.check(octets, check)).orElse(Logo.NONE);
        check.done();
        keep(customerId, new Brand(draft.name().strip(), colour, logo.octets(), logo.type(), lines), draft.dropLogo());
    }

    private void keep(OptionalLong customerId, Brand entered, boolean dropLogo) {
        Instant now = parts.now();
        parts.store().whole((rows, connection) -> {
            String name = customerId.isEmpty()
                    ? "the firm"
                    : new PlanTable(rows)
                            .customer(customerId.getAsLong())
                            .orElseThrow(
                                    () -> new InputRejected(Map.of("customer", "this customer is not there any more")));
            BrandTable table = new BrandTable(rows);
            Brand before = table.now(customerId).orElse(new Brand("", "", new byte[0], "", List.of()));
            boolean keep = entered.logo().length == 0 && !dropLogo;
            Brand after = keep
                    ? new Brand(entered.name(), entered.colour(), before.logo(), before.logoType(), entered.lines())
                    : entered;
            List<FieldChange> changes = FieldSet.between(fields(before), fields(after));
            if (!changes.isEmpty()) {
                table.save(customerId, after, now);
                Long id = customerId.isPresent() ? customerId.getAsLong() : null;
                Subject subject = new Subject("look of reports", id, name, id);
                parts.audit().note(connection, List.of(new Note("changed", subject, changes)));
            }
            return null;
        });
    }

    private FieldSet fields(Brand brand) {
        return new FieldSet()
                .with("name", brand.name())
                .with("colour", brand.colour())
                .with(
                        "logo",
                        brand.logo().length == 0
                                ? ""
                                : brand.logoType() + ", SHA-256 "
                                        + parts.making().sha256(brand.logo()))
                .with("lines", String.join("; ", brand.lines()));
    }
}
