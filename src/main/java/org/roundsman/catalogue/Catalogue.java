package org.roundsman.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.Models;

/**
 * The models as they are sold and promised. The catalogue is the firm's own: nobody's scope bounds it, and who may change it or
 * see prices is for callers to ask of the role. A change sends {@code FleetChanged}; one of a model's firmware line sends
 * {@link ModelMoved} as well.
 */
@ApplicationScoped
@Transactional
public class Catalogue {

    private final Models models;
    private final Event<ModelMoved> moved;

    @Inject
    Catalogue(Models models, Event<ModelMoved> moved) {
        this.models = models;
        this.moved = moved;
    }

    /**
     * A model with what belongs to it.
     *
     * @param line the family of firmware that it takes
     * @param devices how many devices are of it, of all customers
     */
    public record Entry(Model model, Optional<FirmwareLine> line, long devices) {

        /** The terms that it is sold with; empty where none are entered. */
        public Optional<WarrantyTerms> terms() {
            return WarrantyTerms.of(model);
        }
    }

    /** By maker and name. */
    public List<Model> all() {
        return models.all();
    }

    /** The same with what belongs to each. */
    public List<Entry> entries() {
        Map<Long, FirmwareLine> lines = new HashMap<>();
        FirmwareLine.<FirmwareLine>listAll().forEach(line -> lines.put(line.id, line));
        Map<Long, Long> devices = models.deviceCounts();
        return models.all().stream()
                .map(model -> new Entry(
                        model,
                        Optional.ofNullable(model.firmwareLineId).map(lines::get),
                        devices.getOrDefault(model.id, 0L)))
                .toList();
    }

    /** Empty when there is none. */
    public Optional<Model> find(long id) {
        return models.find(id);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Model add(ModelDraft draft) {
        requireLine(draft);
        return models.add(draft);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken; {@code id} when the model is gone
     */
    public Model change(long id, ModelDraft draft) {
        requireLine(draft);
        OptionalLong before = models.find(id).map(Catalogue::line).orElseGet(OptionalLong::empty);
        Model model = models.change(id, draft);
        OptionalLong after = line(model);
        if (before.isPresent() && !before.equals(after)) {
            moved.fire(new ModelMoved(id, model.maker + " " + model.name, before.getAsLong(), after));
        }
        return model;
    }

    private static OptionalLong line(Model model) {
        return model.firmwareLineId == null ? OptionalLong.empty() : OptionalLong.of(model.firmwareLineId);
    }

    /**
     * @throws InputRejected with the empty field when devices are of this model, saying how many, or something else rests on it;
     *     with {@code id} when it is gone
     */
    public void remove(long id) {
        models.remove(id);
    }

    private static void requireLine(ModelDraft draft) {
        Long line = draft.firmwareLineId();
        if (line != null && FirmwareLine.findByIdOptional(line).isEmpty()) {
            throw new InputRejected(
                    Map.of("firmwareLineId", "there is no such firmware line any more; choose another"));
        }
    }
}
