package org.roundsman.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.persistence.LockModeType;
import jakarta.persistence.PersistenceException;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.InputCheck;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Model;

/** Reads and changes the families of firmware. A change sends {@link LinesChanged}. */
@ApplicationScoped
@Transactional
public class FirmwareLines {

    private final AuditTrail audit;
    private final Event<LinesChanged> changed;

    @Inject
    FirmwareLines(AuditTrail audit, Event<LinesChanged> changed) {
        this.audit = audit;
        this.changed = changed;
    }

    /** By name. */
    public List<FirmwareLine> all() {
        return FirmwareLine.list("order by lower(name)");
    }

    /** Empty when there is none. */
    public Optional<FirmwareLine> find(long id) {
        return FirmwareLine.findByIdOptional(id);
    }

    /** The models that take its releases, by maker and name. */
    public List<Model> modelsOf(long id) {
        return Model.list("firmwareLineId = ?1 order by lower(maker), lower(name)", id);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public FirmwareLine add(FirmwareLineDraft draft) {
        check(null, draft);
        FirmwareLine line = new FirmwareLine();
        fill(line, draft);
        line.persist();
        audit.added(subject(line), fields(line));
        changed.fire(new LinesChanged());
        return line;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken; {@code id} when the line is gone
     */
    public FirmwareLine change(long id, FirmwareLineDraft draft) {
        return change(id, line -> draft);
    }

    /**
     * The same with a draft that rests on the line as it is while nobody else changes it.
     *
     * @throws InputRejected as above
     */
    public FirmwareLine change(long id, Drafting drafting) {
        FirmwareLine line = held(id);
        FirmwareLineDraft draft = drafting.of(line);
        check(id, draft);
        FieldSet before = fields(line);
        fill(line, draft);
        audit.changed(subject(line), before, fields(line));
        changed.fire(new LinesChanged());
        return line;
    }

    private static FirmwareLine held(long id) {
        return FirmwareLine.<FirmwareLine>findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
                .orElseThrow(() -> gone(id));
    }

    /** Makes the new draft of a line out of the line as it is. */
    @FunctionalInterface
    public interface Drafting {
        FirmwareLineDraft of(FirmwareLine line);
    }

    /**
     * @throws InputRejected with the empty field when models take it, saying how many, or something else rests on it; with
     *     {@code id} when it is gone
     */
    public void remove(long id) {
        remove(id, line -> {});
    }

    /**
     * The same after a look at the line as it is while nobody else changes it; what the look throws keeps the line.
     *
     * @throws InputRejected as above
     */
    public void remove(long id, Consumer<FirmwareLine> look) {
        FirmwareLine line = held(id);
        look.accept(line);
        long models = Model.count("firmwareLineId = ?1", id);
        if (models > 0) {
            throw inUse(models + (models == 1 ? " model takes" : " models take") + " this line; change "
                    + (models == 1 ? "it" : "them") + " first");
        }
        FieldSet before = fields(line);
        line.delete();
        try {
            FirmwareLine.flush();
        } catch (PersistenceException e) {
            throw inUse("something that was entered rests on this line, such as firmware decisions");
        }
        audit.note(List.of(new AuditTrail.Note("removed", subject(line), FieldSet.between(before, new FieldSet()))));
        changed.fire(new LinesChanged());
    }

    private static void check(Long id, FirmwareLineDraft draft) {
        InputCheck check = new InputCheck();
        draft.check(check);
        check.done();
        boolean taken = FirmwareLine.count(
                        "lower(name) = lower(?1) and (?2 is null or id <> ?2)",
                        draft.name().strip(),
                        id)
                > 0;
        check.that("name", !taken, "there is a firmware line of this name already");
        check.done();
    }

    private static void fill(FirmwareLine line, FirmwareLineDraft draft) {
        line.name = draft.name().strip();
        line.scheme = draft.scheme();
        line.pattern = draft.pattern();
        line.note = draft.note().strip();
    }

    private static Subject subject(FirmwareLine line) {
        return new Subject("firmware line", line.id, line.name, null);
    }

    private static FieldSet fields(FirmwareLine line) {
        return new FieldSet()
                .with("name", line.name)
                .with("compared by", line.scheme.word())
                .with("pattern", line.pattern)
                .with("note", line.note);
    }

    private static InputRejected inUse(String reason) {
        return new InputRejected(Map.of("", "Not removed: " + reason));
    }

    private static InputRejected gone(long id) {
        return new InputRejected(Map.of("id", "firmware line " + id + " is not there any more"));
    }
}
