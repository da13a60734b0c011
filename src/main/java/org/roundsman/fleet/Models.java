package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;

/** Reads and changes the models that devices are of. */
@ApplicationScoped
@Transactional
public class Models {

    private final AuditTrail audit;

    @Inject
    Models(AuditTrail audit) {
        this.audit = audit;
    }

    /** By maker and name. */
    public List<Model> all() {
        return Model.list("order by lower(maker), lower(name)");
    }

    /** Adds the model, or leaves the one of that maker and name as it is; returns the one that is kept. */
    public Model ensure(Model model) {
        return Model.<Model>find("maker = ?1 and name = ?2", model.maker, model.name)
                .firstResultOptional()
                .orElseGet(() -> {
                    model.persist();
                    audit.added(
                            new Subject("model", model.id, model.maker + " " + model.name, null),
                            FleetFields.of(model));
                    return model;
                });
    }
}
