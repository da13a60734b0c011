package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.ImportRights;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.TransferTable;

/**
 * Finds out what each row would do to the fleet as it is now. A row sees what the rows of the tables before its own add.
 * What is asked of a row by itself is asked by the drafts, as for entries by hand; what is asked of it among others (names,
 * addresses, references) is asked here.
 */
final class Evaluation {

    private final ImportRights rights;
    private final Picture picture;
    private final LocalDate today;
    private final List<Entry<CustomerDraft>> customers = new ArrayList<>();
    private final List<Entry<SiteDraft>> sites = new ArrayList<>();
    private final List<Entry<ModelDraft>> models = new ArrayList<>();
    private final List<Entry<DeviceDraft>> devices = new ArrayList<>();
    private final List<Entry<Bought>> purchases = new ArrayList<>();

    private Evaluation(ImportRights rights, Picture picture, LocalDate today) {
        this.rights = rights;
        this.picture = picture;
        this.today = today;
    }

    /**
     * Evaluates the rows against the fleet as the connection's transaction sees it; the rows then hold their outcomes.
     *
     * @param today by the calendar in UTC: what is far ahead of it is hardly meant
     */
    static Evaluation of(Connection connection, ImportRights rights, List<Line> lines, LocalDate today)
            throws SQLException {
        Evaluation evaluation = new Evaluation(rights, Picture.load(connection, rights.scope(), lines), today);
        Map<TransferTable, List<Line>> byTable = new HashMap<>();
        lines.stream().filter(line -> !line.isMisshapen()).forEach(line -> byTable.computeIfAbsent(
                        line.table(), t -> new ArrayList<>())
                .add(line));
        byTable.getOrDefault(TransferTable.CUSTOMERS, List.of()).forEach(evaluation::customer);
        byTable.getOrDefault(TransferTable.SITES, List.of()).forEach(evaluation::site);
        evaluation.models(byTable.getOrDefault(TransferTable.MODELS, List.of()));
        evaluation.devices(byTable.getOrDefault(TransferTable.DEVICES, List.of()));
        byTable.getOrDefault(TransferTable.PURCHASES, List.of()).forEach(evaluation::purchase);
        return evaluation;
    }

    List<Entry<CustomerDraft>> customers() {
        return customers;
    }

    List<Entry<SiteDraft>> sites() {
        return sites;
    }

    List<Entry<ModelDraft>> models() {
        return models;
    }

    List<Entry<DeviceDraft>> devices() {
        return devices;
    }

    List<Entry<Bought>> purchases() {
        return purchases;
    }

    KnownNames known() {
        return picture.known();
    }

    private void customer(Line line) {
        Entry<CustomerDraft> found = picture.customer(line.at("customer"));
        if (found != null && claimed(line, "customer", found)) {
            return;
        }
        Entry<CustomerDraft> entry = found == null ? new Entry<>(null, line) : found;
        entry.claim(line);
        if (found == null) {
            if (rights.scope().onlyCustomer() != null) {
                line.fault("customer", "there is no customer of this name that you may change");
            }
            picture.add(line.at("customer"), entry);
        }
        Map<String, String> before = entry.isNew() ? Map.of() : CustomerCells.of(entry.stored());
        CustomerDraft draft = CustomerCells.read(new Cells(line, before));
        faults(line, draft.faults(), CustomerCells.COLUMNS);
        entry.wants(draft);
        line.becomes(entry.isNew(), Differences.between(before, CustomerCells.of(draft)));
        customers.add(entry);
    }

    private void site(Line line) {
        Entry<CustomerDraft> customer = customerOf(line);
        if (customer == null) {
            return;
        }
        Entry<SiteDraft> found = picture.site(customer, line.at("site"));
        if (found != null && claimed(line, "site", found)) {
            return;
        }
        Entry<SiteDraft> entry = found == null ? new Entry<>(customer, line) : found;
        entry.claim(line);
        if (found == null) {
            picture.addSite(line.at("site"), entry);
        }
        String owner = customer.last().name();
        Map<String, String> before = entry.isNew() ? Map.of() : SiteCells.of(owner, entry.stored());
        SiteDraft draft = SiteCells.read(new Cells(line, before));
        faults(line, draft.faults(), SiteCells.COLUMNS);
        entry.wants(draft);
        line.becomes(entry.isNew(), Differences.between(before, SiteCells.of(owner, draft)));
        sites.add(entry);
    }

    private void models(List<Line> lines) {
        if (!rights.catalogue()) {
            lines.forEach(line ->
                    line.fault("model", "models are added and changed by account managers and owners, not by you"));
            return;
        }
        lines.forEach(this::model);
        ObjectIds.check(picture.models());
    }

    private void model(Line line) {
        Entry<ModelDraft> found = picture.model(line.at("maker"), line.at("model"));
        if (found != null && claimed(line, "model", found)) {
            return;
        }
        Entry<ModelDraft> entry = found == null ? new Entry<>(null, line) : found;
        entry.claim(line);
        Map<String, String> before = entry.isNew() ? Map.of() : ModelCells.of(entry.stored(), picture.known());
        ModelDraft draft = ModelCells.read(new Cells(line, before), picture.known());
        faults(line, draft.faults(), ModelCells.COLUMNS);
        keepsKind(line, entry, draft);
        entry.wants(draft);
        if (found == null) {
            picture.addModel(line.at("maker"), line.at("model"), entry);
            picture.known().addFresh(entry);
        }
        line.becomes(entry.isNew(), Differences.between(before, ModelCells.of(draft, picture.known())));
        models.add(entry);
    }

    /** Whoever may change models sees all devices. */
    private void keepsKind(Line line, Entry<ModelDraft> entry, ModelDraft draft) {
        if (!entry.isNew()
                && draft.kind() != null
                && draft.kind() != entry.stored().kind()
                && picture.storedDevices().stream()
                        .anyMatch(device -> entry.id().equals(device.stored().modelId()))) {
            line.fault(
                    "kind",
                    "devices are of this model as " + entry.stored().kind().word() + "; give them another model first");
        }
    }

    /** By name first; a row whose name nobody has may still be about the device that is polled at its address. */
    private void devices(List<Line> lines) {
        Map<Line, Entry<SiteDraft>> unnamed = new LinkedHashMap<>();
        for (Line line : lines) {
            Entry<SiteDraft> site = siteOf(line, true);
            if (site != null) {
                Entry<DeviceDraft> found = picture.device(site, line.at("device"));
                if (found == null) {
                    unnamed.put(line, site);
                } else if (!claimed(line, "device", found)) {
                    device(line, found);
                }
            }
        }
        unnamed.forEach(this::unnamedDevice);
        new Addresses(picture.storedDevices(), devices).check();
    }

    private void unnamedDevice(Line line, Entry<SiteDraft> site) {
        String name = line.at("device");
        Entry<DeviceDraft> twin = picture.device(site, name);
        if (twin != null && claimed(line, "device", twin)) {
            return;
        }
        Entry<DeviceDraft> there = picture.deviceAt(site, line.at("host"), DeviceCells.port(new Cells(line, Map.of())));
        Entry<DeviceDraft> entry = there != null && there.line() == null ? there : new Entry<>(site, line);
        picture.addDevice(name, entry);
        device(line, entry);
    }

    private void device(Line line, Entry<DeviceDraft> entry) {
        entry.claim(line);
        Entry<?> site = entry.owner();
        String siteName = ((SiteDraft) site.last()).name();
        String customerName = ((CustomerDraft) site.owner().last()).name();
        Map<String, String> before =
                entry.isNew() ? Map.of() : DeviceCells.of(customerName, siteName, entry.stored(), picture.known());
        DeviceDraft draft = DeviceCells.read(new Cells(line, before), site, entry.stored(), picture.known());
        faults(line, draft.faults(), DeviceCells.COLUMNS);
        entry.wants(draft);
        line.becomes(
                entry.isNew(),
                Differences.between(before, DeviceCells.of(customerName, siteName, draft, picture.known())));
        devices.add(entry);
    }

    private void purchase(Line line) {
        Entry<CustomerDraft> customer = customerOf(line);
        if (customer == null) {
            return;
        }
        Entry<Bought> found = picture.purchase(customer, line.at("serial"));
        if (found != null && claimed(line, "serial", found)) {
            return;
        }
        Entry<Bought> entry = found == null ? new Entry<>(customer, line) : found;
        entry.claim(line);
        if (found == null) {
            picture.addPurchase(line.at("serial"), entry);
        }
        String owner = customer.last().name();
        Map<String, String> before = entry.isNew() ? Map.of() : entry.stored().cells(owner);
        Bought wanted = bought(line, entry, before);
        faults(line, wanted.draft().faults(today), Bought.COLUMNS);
        entry.wants(wanted);
        line.becomes(entry.isNew(), Differences.between(before, wanted.cells(owner)));
        purchases.add(entry);
    }

    private Bought bought(Line line, Entry<Bought> entry, Map<String, String> before) {
        Bought stored = entry.stored();
        Entry<SiteDraft> site = stored == null ? null : stored.site();
        if (line.has("site")) {
            site = line.at("site").isEmpty() ? null : siteOf(line, false);
        }
        Entry<DeviceDraft> device = stored == null ? null : stored.device();
        if (line.has("device")) {
            device = line.at("device").isEmpty() ? null : deviceOf(line, site);
        } else if (device != null && device.owner() != site) {
            line.fault(
                    "site", "device " + device.last().name() + " of this purchase is at another site; name the device");
        }
        return new Bought(
                Bought.read(
                        new Cells(line, before), site == null ? null : site.id(), device == null ? null : device.id()),
                site,
                device);
    }

    /** The customer that a row names; a fault and null when there is none. */
    private Entry<CustomerDraft> customerOf(Line line) {
        Entry<CustomerDraft> customer = picture.customer(line.at("customer"));
        return usable(line, "customer", customer) ? customer : null;
    }

    private Entry<SiteDraft> siteOf(Line line, boolean needed) {
        Entry<CustomerDraft> customer = customerOf(line);
        if (customer == null || line.at("site").isEmpty() && !needed) {
            return null;
        }
        Entry<SiteDraft> site = picture.site(customer, line.at("site"));
        return usable(line, "site", site) ? site : null;
    }

    private Entry<DeviceDraft> deviceOf(Line line, Entry<SiteDraft> site) {
        if (site == null) {
            line.fault("site", "name the site of the device as well");
            return null;
        }
        Entry<DeviceDraft> device = picture.device(site, line.at("device"));
        return usable(line, "device", device) ? device : null;
    }

    /** Whether what a row refers to is there, or will be by a row that is not refused. */
    private static boolean usable(Line line, String column, Entry<?> entry) {
        if (line.at(column).isEmpty()) {
            line.fault(column, "must not be empty");
        } else if (entry == null) {
            line.fault(column, "there is no " + column + " of this name, and no row of this upload adds one");
        } else if (entry.isNew() && entry.line().refused()) {
            line.fault(column, "is added by " + entry.line().place() + ", which is refused");
        } else {
            return true;
        }
        return false;
    }

    /** A second row about the same thing is refused. */
    private static boolean claimed(Line line, String column, Entry<?> entry) {
        boolean claimed = entry.line() != null;
        if (claimed) {
            line.fault(
                    column,
                    entry.line().place() + " is about the same " + line.table().one() + " already");
        }
        return claimed;
    }

    private static void faults(Line line, Map<String, String> faults, Map<String, String> columns) {
        faults.forEach((field, reason) -> line.fault(columns.getOrDefault(field, field), reason));
    }
}
