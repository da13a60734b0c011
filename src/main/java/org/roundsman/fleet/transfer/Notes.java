package org.roundsman.fleet.transfer;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRun.Source;
import org.roundsman.fleet.TransferTable;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;

/** What an import leaves in the audit: an entry for each row that changed something, and one for the whole. */
final class Notes {

    /** Fields are called as after a change by hand. */
    private static final Map<String, String> WORDS = Map.of(
            "host", "address",
            "interval_s", "seconds between rounds",
            "bands_ghz", "bands",
            "poe_class", "PoE class",
            "warranty", "warranty terms",
            "uplink_down_mbit", "uplink down, Mb/s",
            "uplink_up_mbit", "uplink up, Mb/s");

    private final List<Note> notes = new ArrayList<>();
    private final Set<Long> customers = new HashSet<>();
    private final List<FieldChange> counts = new ArrayList<>();

    private Notes() {}

    /** To be called when everything new has its id. */
    static List<Note> of(long run, Evaluation evaluation, List<Source> files) {
        Notes all = new Notes();
        all.add(
                TransferTable.CUSTOMERS,
                evaluation.customers(),
                entry -> entry.wanted().name(),
                Entry::id);
        all.add(TransferTable.SITES, evaluation.sites(), entry -> entry.wanted().name(), entry -> entry.owner()
                .id());
        all.add(
                TransferTable.MODELS,
                evaluation.models(),
                entry -> entry.wanted().maker() + " " + entry.wanted().name(),
                entry -> null);
        all.add(
                TransferTable.DEVICES,
                evaluation.devices(),
                entry -> entry.wanted().name(),
                entry -> entry.owner().owner().id());
        all.add(
                TransferTable.PURCHASES,
                evaluation.purchases(),
                entry -> entry.wanted().draft().serial(),
                entry -> entry.owner().id());
        return all.with(run, files);
    }

    /** What belongs on the timelines of devices, as after a change by hand: that other credentials are used. */
    static List<DeviceEvent> events(Evaluation evaluation, Instant at) {
        return evaluation.devices().stream()
                .filter(device -> device.line().outcome() == ImportOutcome.CHANGED)
                .filter(device ->
                        !device.stored().credentialId().equals(device.wanted().credentialId()))
                .map(device -> DeviceEvent.change(
                        device.id(),
                        at,
                        EventKind.CREDENTIALS_CHANGED,
                        "Other credentials are used",
                        evaluation.known().credentialName(device.stored().credentialId()),
                        evaluation.known().credentialName(device.wanted().credentialId())))
                .toList();
    }

    private <D> void add(
            TransferTable table,
            List<Entry<D>> entries,
            Function<Entry<D>, String> name,
            Function<Entry<D>, Long> customer) {
        int fresh = 0;
        int changed = 0;
        for (Entry<D> entry : entries) {
            ImportOutcome outcome = entry.line().outcome();
            if (outcome == ImportOutcome.SAME) {
                continue;
            }
            Subject subject = new Subject(table.one(), entry.id(), name.apply(entry), customer.apply(entry));
            customers.add(subject.customerId());
            String action = outcome == ImportOutcome.NEW ? "added" : "changed";
            notes.add(new Note(
                    action, subject, worded(table, entry.line().result().changes())));
            fresh += outcome == ImportOutcome.NEW ? 1 : 0;
            changed += outcome == ImportOutcome.CHANGED ? 1 : 0;
        }
        if (fresh + changed > 0) {
            counts.add(new FieldChange(table.word(), "", fresh + " new, " + changed + " changed"));
        }
    }

    private static List<FieldChange> worded(TransferTable table, List<FieldChange> changes) {
        return changes.stream()
                .map(change -> new FieldChange(word(table, change.field()), change.old(), change.fresh()))
                .toList();
    }

    private static String word(TransferTable table, String column) {
        return column.equals(table.one()) ? "name" : WORDS.getOrDefault(column, column.replace('_', ' '));
    }

    private List<Note> with(long run, List<Source> files) {
        String names = files.stream().map(Source::name).collect(Collectors.joining(", "));
        customers.remove(null); // models are nobody's
        Long only = customers.size() == 1 ? customers.iterator().next() : null;
        notes.add(new Note("applied", new Subject("import", run, names, only), counts));
        return notes;
    }
}
