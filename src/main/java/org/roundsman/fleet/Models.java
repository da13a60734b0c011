package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Reads and changes the models that devices are of. They are no customer's, so that nobody's scope bounds them. */
@ApplicationScoped
@Transactional
public class Models {

    private final AuditTrail audit;
    private final Event<FleetChanged> changed;

    @Inject
    Models(AuditTrail audit, Event<FleetChanged> changed) {
        this.audit = audit;
        this.changed = changed;
    }

    /** By maker and name. */
    public List<Model> all() {
        return Model.list("order by lower(maker), lower(name)");
    }

    public Optional<Model> find(long id) {
        return Model.findByIdOptional(id);
    }

    /** How many devices of each model there are, by the model's id; a model without devices is left out. */
    public Map<Long, Long> deviceCounts() {
        Map<Long, Long> counts = new HashMap<>();
        Model.getEntityManager()
                .createQuery(
                        "select d.model.id, count(d) from Device d where d.model is not null group by d.model.id",
                        Object[].class)
                .getResultList()
                .forEach(row -> counts.put((Long) row[0], (Long) row[1]));
        return counts;
    }

    /** Adds the model, or leaves the one of that maker and name as it is; returns the one that is kept. */
    public Model ensure(Model model) {
        return Model.<Model>find("maker = ?1 and name = ?2", model.maker, model.name)
                .firstResultOptional()
                .orElseGet(() -> {
                    model.persist();
                    audit.added(FleetFields.subject(model), FleetFields.of(model));
                    return model;
                });
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Model add(ModelDraft draft) {
        check(null, draft);
        Model model = new Model();
        draft.fill(model);
        model.persist();
        audit.added(FleetFields.subject(model), FleetFields.of(model));
        changed.fire(new FleetChanged());
        return model;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken; {@code id} when the model is gone
     */
    public Model change(long id, ModelDraft draft) {
        Model model = find(id).orElseThrow(() -> gone(id));
        check(id, draft);
        keepsKind(model, draft);
        FieldSet before = FleetFields.of(model);
        draft.fill(model);
        audit.changed(FleetFields.subject(model), before, FleetFields.of(model));
        changed.fire(new FleetChanged());
        return model;
    }

    /**
     * @throws InputRejected with the empty field when devices are of this model or something else rests on it; with {@code id}
     *     when it is gone
     */
    public void remove(long id) {
        Model model = find(id).orElseThrow(() -> gone(id));
        long devices = Device.count("model.id = ?1", id);
        if (devices > 0) {
            throw inUse(Counted.of(devices, "device is", "devices are") + " of this model; give "
                    + (devices == 1 ? "it" : "them") + " another model first");
        }
        long rules = ruleValues(id);
        if (rules > 0) {
            throw inUse(Counted.of(rules, "rule has", "rules have")
                    + " values of their own for this model; remove them first");
        }
        FieldSet before = FleetFields.of(model);
        model.delete();
        try {
            Model.flush();
        } catch (PersistenceException e) {
            throw inUse("something that was entered rests on this model, such as firmware decisions or stays of units");
        }
        audit.note(List.of(
                new AuditTrail.Note("removed", FleetFields.subject(model), FieldSet.between(before, new FieldSet()))));
        changed.fire(new FleetChanged());
    }

    private static void keepsKind(Model model, ModelDraft draft) {
        long devices = model.kind == draft.kind() ? 0 : Device.count("model.id = ?1", model.id);
        if (devices > 0) {
            throw new InputRejected(Map.of(
                    "kind",
                    Counted.of(devices, "device is", "devices are")
                            + " of this model as " + model.kind.word() + "; give " + (devices == 1 ? "it" : "them")
                            + " another model first"));
        }
    }

    /** The database would remove them together with the model, and nobody would have decided that. */
    private static long ruleValues(long id) {
        return (Long) Model.getEntityManager()
                .createNativeQuery("select count(*) from rule_override where model_id = :id", Long.class)
                .setParameter("id", id)
                .getSingleResult();
    }

    private static void check(Long id, ModelDraft draft) {
        InputCheck check = new InputCheck();
        draft.check(check);
        check.done();
        boolean taken = Model.count(
                        "lower(maker) = lower(?1) and lower(name) = lower(?2) and (?3 is null or id <> ?3)",
                        draft.maker().strip(),
                        draft.name().strip(),
                        id)
                > 0;
        check.that("name", !taken, "this maker has a model of this name already");
        boolean answered = !draft.objectId().isEmpty()
                && Model.count("objectId = ?1 and (?2 is null or id <> ?2)", draft.objectId(), id) > 0;
        check.that("objectId", !answered, "another model answers with this already");
        check.done();
    }

    private static InputRejected inUse(String reason) {
        return new InputRejected(Map.of("", "Not removed: " + reason));
    }

    private static InputRejected gone(long id) {
        return new InputRejected(Map.of("id", "model " + id + " is not there any more"));
    }
}
