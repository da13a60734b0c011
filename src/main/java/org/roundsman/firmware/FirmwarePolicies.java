package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.firmware.Release.Stand;
import org.roundsman.firmware.store.PolicyTable;
import org.roundsman.firmware.store.PolicyWriting;
import org.roundsman.fleet.InputRejected;

/**
 * Reads and changes what is decided about firmware. It is nobody's in particular: who sees one customer only has no business
 * here. Methods that change something throw {@link InputRejected} naming each field that cannot be taken, or {@code id} when
 * the line or the entry is not there. Thread-safe; changes of one line come one after the other.
 */
@ApplicationScoped
@Transactional
public class FirmwarePolicies {

    private final PolicyTable table;
    private final PolicyWriting writing;
    private final AuditTrail audit;
    private final Clock clock;
    private final Event<FirmwarePolicyChanged> changed;

    @Inject
    FirmwarePolicies(DataSource database, AuditTrail audit, Clock clock, Event<FirmwarePolicyChanged> changed) {
        this.table = new PolicyTable(database);
        this.writing = new PolicyWriting(database);
        this.audit = audit;
        this.clock = clock;
        this.changed = changed;
    }

    /** Every line, by name. */
    public List<LinePolicy> all() {
        return table.all();
    }

    public Optional<LinePolicy> find(long lineId) {
        return table.find(lineId);
    }

    /**
     * Decides about a release: adds it, or changes what was decided about that version for the same models. A release that was
     * recommended before another one becomes an accepted one.
     */
    public Release save(long lineId, ReleaseDraft entered) {
        LinePolicy line = hold(lineId);
        ReleaseDraft draft = entered.tidy(today());
        refuse(new PolicyFaults(line, clock.instant()).of(draft));
        Optional<Release> before = line.releases().stream()
                .filter(one -> one.version().equals(draft.version()) && sameModels(one, draft))
                .findFirst();
        if (draft.stand() == Stand.RECOMMENDED) {
            line.releases().stream()
                    .filter(one -> one.stand() == Stand.RECOMMENDED && sameModels(one, draft))
                    .filter(one -> !one.version().equals(draft.version()))
                    .forEach(one -> stepDown(line, one));
        }
        long id = before.map(one -> writing.change(one.id(), draft)).orElseGet(() -> writing.add(lineId, draft));
        Release after = release(hold(lineId), id);
        note(line, before, after);
        changed.fire(new FirmwarePolicyChanged());
        return after;
    }

    private void stepDown(LinePolicy line, Release release) {
        writing.accept(release.id());
        note(line, Optional.of(release), release(hold(line.lineId()), release.id()));
    }

    private void note(LinePolicy line, Optional<Release> before, Release after) {
        if (before.isEmpty()) {
            audit.added(subject(line, after), fields(after));
        } else {
            audit.changed(subject(line, after), fields(before.get()), fields(after));
        }
    }

    private static boolean sameModels(Release one, ReleaseDraft draft) {
        return one.modelId().equals(PolicyFaults.optional(draft.modelId()));
    }

    private static Release release(LinePolicy line, long id) {
        return line.releases().stream()
                .filter(one -> one.id() == id)
                .findFirst()
                .orElseThrow(FirmwarePolicies::gone);
    }

    /** Nothing is decided about that release any more. */
    public void removeRelease(long lineId, long id) {
        LinePolicy line = hold(lineId);
        Release before = release(line, id);
        writing.remove("firmware_release", id);
        removed(subject(line, before), fields(before));
        changed.fire(new FirmwarePolicyChanged());
    }

    /** Sets the minimum for a security fix: adds it, or changes the one of that identifier for the same models. */
    public SecurityMinimum save(long lineId, MinimumDraft entered) {
        LinePolicy line = hold(lineId);
        MinimumDraft draft = entered.tidy();
        refuse(new PolicyFaults(line, clock.instant()).of(draft));
        Optional<SecurityMinimum> before = line.minimums().stream()
                .filter(one -> one.identifier().equalsIgnoreCase(draft.identifier())
                        && one.modelId().equals(PolicyFaults.optional(draft.modelId())))
                .findFirst();
        long id = before.map(one -> writing.change(one.id(), draft)).orElseGet(() -> writing.add(lineId, draft));
        SecurityMinimum after = minimum(hold(lineId), id);
        if (before.isEmpty()) {
            audit.added(subject(line, after), fields(after));
        } else {
            audit.changed(subject(line, after), fields(before.get()), fields(after));
        }
        changed.fire(new FirmwarePolicyChanged());
        return after;
    }

    private static SecurityMinimum minimum(LinePolicy line, long id) {
        return line.minimums().stream()
                .filter(one -> one.id() == id)
                .findFirst()
                .orElseThrow(FirmwarePolicies::gone);
    }

    public void removeMinimum(long lineId, long id) {
        LinePolicy line = hold(lineId);
        SecurityMinimum before = minimum(line, id);
        writing.remove("firmware_minimum", id);
        removed(subject(line, before), fields(before));
        changed.fire(new FirmwarePolicyChanged());
    }

    /** Lets a site run the pilot release of the line first; nothing happens where it does already. */
    public void addPilot(long lineId, long siteId) {
        LinePolicy line = hold(lineId);
        if (pilot(line, siteId).isPresent()) {
            return;
        }
        if (!writing.addPilot(lineId, siteId)) {
            throw new InputRejected(Map.of("site", "choose a site"));
        }
        LinePolicy.PilotSite site = pilot(hold(lineId), siteId).orElseThrow(FirmwarePolicies::gone);
        audit.added(subject(line, site), fields(site));
        changed.fire(new FirmwarePolicyChanged());
    }

    public void removePilot(long lineId, long siteId) {
        LinePolicy line = hold(lineId);
        LinePolicy.PilotSite site = pilot(line, siteId).orElseThrow(FirmwarePolicies::gone);
        writing.removePilot(lineId, siteId);
        removed(subject(line, site), fields(site));
        changed.fire(new FirmwarePolicyChanged());
    }

    private static Optional<LinePolicy.PilotSite> pilot(LinePolicy line, long siteId) {
        return line.pilots().stream().filter(site -> site.siteId() == siteId).findFirst();
    }

    /** Lets a customer's devices run something else until the end of a day. */
    public PolicyException except(long lineId, ExceptionDraft entered) {
        LinePolicy line = hold(lineId);
        ExceptionDraft draft = entered.tidy();
        boolean there = draft.customerId() != null && writing.customerThere(draft.customerId());
        refuse(new PolicyFaults(line, clock.instant()).of(draft, there));
        long id = writing.add(lineId, draft, audit.actor().name(), clock.instant());
        PolicyException after = exception(hold(lineId), id);
        audit.added(subject(line, after), fields(after));
        changed.fire(new FirmwarePolicyChanged());
        return after;
    }

    /** Takes an exception back: the policy holds again at once. */
    public void removeException(long lineId, long id) {
        LinePolicy line = hold(lineId);
        PolicyException before = exception(line, id);
        writing.remove("firmware_exception", id);
        removed(subject(line, before), fields(before));
        changed.fire(new FirmwarePolicyChanged());
    }

    private static PolicyException exception(LinePolicy line, long id) {
        return line.exceptions().stream()
                .filter(one -> one.id() == id)
                .findFirst()
                .orElseThrow(FirmwarePolicies::gone);
    }

    /** What was decided stays readable after it is gone. */
    private void removed(Subject subject, FieldSet before) {
        audit.note(List.of(new AuditTrail.Note("removed", subject, FieldSet.between(before, new FieldSet()))));
    }

    private LinePolicy hold(long lineId) {
        writing.hold(lineId);
        return table.find(lineId).orElseThrow(FirmwarePolicies::gone);
    }

    private LocalDate today() {
        return clock.instant().atZone(ZoneOffset.UTC).toLocalDate();
    }

    private static InputRejected gone() {
        return new InputRejected(Map.of("id", "this is not there any more"));
    }

    private static void refuse(Map<String, String> faults) {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    private static String of(String model) {
        return model.isEmpty() ? "" : " of " + model;
    }

    private static Subject subject(LinePolicy line, Release one) {
        return new Subject("firmware release", one.id(), line.line() + " " + one.version() + of(one.model()), null);
    }

    private static Subject subject(LinePolicy line, SecurityMinimum one) {
        return new Subject("firmware minimum", one.id(), line.line() + ", " + one.identifier() + of(one.model()), null);
    }

    private static Subject subject(LinePolicy line, LinePolicy.PilotSite one) {
        return new Subject("firmware pilot site", one.siteId(), line.line() + ", " + one.site(), one.customerId());
    }

    private static Subject subject(LinePolicy line, PolicyException one) {
        return new Subject("firmware exception", one.id(), line.line() + ", " + one.customer(), one.customerId());
    }

    private static FieldSet fields(Release one) {
        return new FieldSet()
                .with("version", one.version())
                .with("decision", one.stand().word())
                .with("for", one.model())
                .with("reason", one.reason())
                .with("withdrawn on", one.withdrawnOn().orElse(null))
                .with("released on", one.releasedOn().orElse(null));
    }

    private static FieldSet fields(SecurityMinimum one) {
        return new FieldSet()
                .with("version", one.version())
                .with("identifier", one.identifier())
                .with("for", one.model())
                .with("note", one.note());
    }

    private static FieldSet fields(LinePolicy.PilotSite one) {
        return new FieldSet().with("site", one.site());
    }

    private static FieldSet fields(PolicyException one) {
        return new FieldSet()
                .with("customer", one.customer())
                .with("version", one.version())
                .with("reason", one.reason())
                .with("last day", one.lastDay());
    }
}
