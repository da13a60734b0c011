package org.roundsman.discovery.recognise;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the model of a device in the catalogue: by the very sysObjectID of the model; else by the model name that the
 * device gives (ENTITY-MIB), where the maker fits; else by the longest sysObjectID that the device's begins with.
 */
public final class ModelMatch {

    private ModelMatch() {}

    /**
     * A model of the catalogue.
     *
     * @param objectId dotted, or null
     */
    public record Candidate(long id, String maker, String name, String objectId) {}

    /**
     * The model.
     *
     * @param objectId what the device said, or empty
     * @param maker the same
     * @param name the same
     */
    public static Optional<Candidate> of(List<Candidate> catalogue, String objectId, String maker, String name) {
        Optional<Candidate> exact =
                catalogue.stream().filter(m -> objectId.equals(m.objectId)).findFirst();
        return exact.or(() -> named(catalogue, maker, name)).or(() -> begins(catalogue, objectId));
    }

    private static Optional<Candidate> named(List<Candidate> catalogue, String maker, String name) {
        List<Candidate> named = catalogue.stream()
                .filter(m -> !name.isBlank() && m.name.equalsIgnoreCase(name.strip()))
                .filter(m -> maker.isBlank() || m.maker.equalsIgnoreCase(maker.strip()))
                .toList();
        return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
    }

    private static Optional<Candidate> begins(List<Candidate> catalogue, String objectId) {
        return catalogue.stream()
                .filter(m -> m.objectId != null && objectId.startsWith(m.objectId + "."))
                .max(Comparator.comparingInt(m -> m.objectId.length()));
    }
}
