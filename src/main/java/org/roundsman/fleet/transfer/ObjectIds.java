package org.roundsman.fleet.transfer;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.ModelDraft;

/** No two models answer with one sysObjectID, as the catalogue will be after the upload. */
final class ObjectIds {

    private ObjectIds() {}

    /** Refuses each row whose object id another model keeps or an earlier row takes. */
    static void check(Collection<Entry<ModelDraft>> models) {
        Map<String, Entry<ModelDraft>> taken = new HashMap<>();
        List<Entry<ModelDraft>> inOrder = models.stream()
                .sorted(Comparator.comparingInt(
                        model -> model.line() == null ? 0 : model.line().row()))
                .toList();
        for (Entry<ModelDraft> model : inOrder) {
            String id = model.last().objectId();
            Entry<ModelDraft> other = id.isEmpty() ? null : taken.putIfAbsent(id, model);
            if (other != null && model.line() != null) {
                model.line().fault("object_id", taken(other));
            }
        }
    }

    private static String taken(Entry<ModelDraft> other) {
        return other.line() == null
                ? other.stored().maker() + " " + other.stored().name() + " answers with this already"
                : other.line().place() + " has this already";
    }
}
