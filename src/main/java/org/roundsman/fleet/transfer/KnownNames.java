package org.roundsman.fleet.transfer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.roundsman.fleet.ModelDraft;

/** Credentials and models by the names that files call them. Secrets are never looked at. */
final class KnownNames {

    private static final int NAMED_AT_MOST = 4;

    private final Map<Long, Credential> credentials = new HashMap<>();
    private final Map<Long, Model> models = new HashMap<>();
    private final Map<Long, Entry<ModelDraft>> fresh = new HashMap<>();
    private final Map<Long, String> lines = new LinkedHashMap<>();

    /**
     * Credentials without their secrets.
     *
     * @param customerId null for every customer's
     * @param siteId null for every site's
     */
    record Credential(long id, Long customerId, Long siteId, String name) {

        private boolean usableAt(Entry<?> site) {
            return (customerId == null || customerId.equals(site.owner().id()))
                    && (siteId == null || siteId.equals(site.id()));
        }

        /** The most specific wins where several have one name. */
        private int reach() {
            return siteId != null ? 0 : customerId != null ? 1 : 2;
        }
    }

    record Model(String maker, String name) {
        private static final Model NONE = new Model("", "");
    }

    void add(Credential credential) {
        credentials.put(credential.id(), credential);
    }

    void add(long id, Model model) {
        models.put(id, model);
    }

    void addLine(long id, String name) {
        lines.put(id, name);
    }

    /** A model that a row adds; devices of later rows may name it. Until it is written it goes by a number below zero. */
    void addFresh(Entry<ModelDraft> model) {
        long number = -1L - fresh.size();
        fresh.put(number, model);
        models.put(number, new Model(model.wanted().maker(), model.wanted().name()));
    }

    /** The id of a model once it is written; null stays null. */
    Long written(Long modelId) {
        return modelId == null || modelId >= 0 ? modelId : fresh.get(modelId).id();
    }

    /** Empty for null. */
    String lineName(Long id) {
        return id == null ? "" : lines.getOrDefault(id, "");
    }

    /** The firmware line that a row names, or null when it names none. */
    Long line(Cells cells) {
        String name = cells.text("firmware_line");
        if (name.isEmpty()) {
            return null;
        }
        return lines.entrySet().stream()
                .filter(line -> line.getValue().equalsIgnoreCase(name))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseGet(() -> {
                    cells.fault(
                            "firmware_line",
                            "there is no firmware line “" + name + "”; "
                                    + (lines.isEmpty()
                                            ? "none is entered yet: add it on the page Firmware lines, then check again"
                                            : "entered are: " + some(List.copyOf(lines.values()))));
                    return null;
                });
    }

    String credentialName(Long id) {
        return id == null ? "" : credentials.get(id).name();
    }

    Model model(Long id) {
        return id == null ? Model.NONE : models.get(id);
    }

    /** The credentials that a row names, as a device of that site may use them; those that are stored stay when named. */
    Long credential(Cells cells, Entry<?> site, Long stored) {
        String name = cells.text("credentials");
        if (name.isEmpty()) {
            cells.fault("credentials", "name the SNMP credentials this device knows");
            return null;
        }
        if (stored != null && credentialName(stored).equalsIgnoreCase(name)) {
            return stored;
        }
        return credentials.values().stream()
                .filter(one -> one.usableAt(site) && one.name().equalsIgnoreCase(name))
                .min((a, b) -> a.reach() == b.reach() ? Long.compare(a.id(), b.id()) : a.reach() - b.reach())
                .map(Credential::id)
                .orElseGet(() -> {
                    cells.fault("credentials", noCredentials(site, name));
                    return null;
                });
    }

    private String noCredentials(Entry<?> site, String name) {
        List<String> usable = credentials.values().stream()
                .filter(one -> one.usableAt(site))
                .map(Credential::name)
                .distinct()
                .sorted()
                .toList();
        return "there are no SNMP credentials “" + name + "” for this site; "
                + (usable.isEmpty()
                        ? "none are entered yet: add them on the page Credentials, then check again"
                        : "usable here: " + some(usable) + "; add others on the page Credentials, then check again");
    }

    /** The model that a row names, or null when it names none. */
    Long model(Cells cells, Long stored) {
        Model wanted = new Model(cells.text("maker"), cells.text("model"));
        if (wanted.equals(Model.NONE) || stored != null && models.get(stored).equals(wanted)) {
            return wanted.equals(Model.NONE) ? null : stored;
        }
        if (wanted.maker().isEmpty() || wanted.name().isEmpty()) {
            cells.fault(wanted.maker().isEmpty() ? "maker" : "model", "a model is named by its maker and its name");
            return null;
        }
        List<Long> same = ids(wanted);
        if (same.isEmpty()) {
            cells.fault("model", noModel(wanted));
            return null;
        }
        Long id = same.get(0);
        Entry<ModelDraft> added = fresh.get(id);
        if (added != null && added.line().refused()) {
            cells.fault("model", "is added by " + added.line().place() + ", which is refused");
            return null;
        }
        return id;
    }

    /** The one written exactly so first. */
    private List<Long> ids(Model wanted) {
        List<Long> ids = new ArrayList<>();
        models.forEach((id, model) -> {
            if (model.equals(wanted)) {
                ids.add(0, id);
            } else if (model.maker().equalsIgnoreCase(wanted.maker())
                    && model.name().equalsIgnoreCase(wanted.name())) {
                ids.add(id);
            }
        });
        return ids;
    }

    private String noModel(Model wanted) {
        List<String> ofMaker = models.values().stream()
                .filter(model -> model.maker().equalsIgnoreCase(wanted.maker()))
                .map(Model::name)
                .sorted()
                .toList();
        return "no such model is known"
                + (ofMaker.isEmpty() ? " of that maker" : "; of that maker there are " + some(ofMaker))
                + ". Leave maker and model empty where they are not known";
    }

    private static String some(List<String> names) {
        String shown =
                names.stream().limit(NAMED_AT_MOST).filter(Objects::nonNull).collect(Collectors.joining(", "));
        return names.size() > NAMED_AT_MOST ? shown + " and " + (names.size() - NAMED_AT_MOST) + " more" : shown;
    }
}
