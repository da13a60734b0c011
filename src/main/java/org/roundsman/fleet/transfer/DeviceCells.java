package org.roundsman.fleet.transfer;

import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.fleet.DeviceDraft;

/** A device as a row of text. */
final class DeviceCells {

    /** Columns of the draft's fields, where they are not called the same. */
    static final Map<String, String> COLUMNS = Map.of(
            "name", "device",
            "credentialId", "credentials",
            "modelId", "model",
            "intervalSeconds", "interval_s");

    private static final int SNMP_PORT = 161;
    private static final int INTERVAL = 60;

    private DeviceCells() {}

    /**
     * @param known names of credentials and models
     */
    static Map<String, String> of(String customer, String site, DeviceDraft draft, KnownNames known) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("customer", customer);
        cells.put("site", site);
        cells.put("device", draft.name());
        cells.put("kind", draft.kind() == null ? "" : draft.kind().word());
        cells.put("host", draft.host());
        cells.put("port", String.valueOf(draft.port()));
        cells.put("credentials", known.credentialName(draft.credentialId()));
        cells.put("maker", known.model(draft.modelId()).maker());
        cells.put("model", known.model(draft.modelId()).name());
        cells.put("place", draft.place());
        cells.put("interval_s", String.valueOf(draft.intervalSeconds()));
        cells.put("paused", draft.paused() ? "yes" : "no");
        return cells;
    }

    /**
     * @param stored what is there of the device, null for a new one
     */
    static DeviceDraft read(Cells cells, Entry<?> site, DeviceDraft stored, KnownNames known) {
        return new DeviceDraft(
                cells.text("device"),
                ModelCells.kind(cells),
                cells.text("host"),
                port(cells),
                known.credential(cells, site, stored == null ? null : stored.credentialId()),
                known.model(cells, stored == null ? null : stored.modelId()),
                cells.text("place"),
                cells.number("interval_s", INTERVAL),
                cells.yes("paused"));
    }

    static int port(Cells cells) {
        return cells.number("port", SNMP_PORT);
    }
}
