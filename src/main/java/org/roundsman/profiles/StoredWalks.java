package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.snmp.Snapshot;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkText;

/** Keeps walks of devices. One that belongs to a customer is seen in that customer's scope, the others by everyone. */
@ApplicationScoped
@Transactional
public class StoredWalks {

    private static final String HEAD =
            "select w.id, w.customer_id, coalesce(c.name, '') as customer, w.device_id, w.name,"
                    + " w.object_id, w.variables, w.blanked, w.remarks, w.taken_at, w.later_at, w.author,"
                    + " exists (select 1 from profile_case k where k.walk_id = w.id) as test_case"
                    + " from stored_walk w left join customer c on c.id = w.customer_id";
    private static final String IN_SCOPE = " (?::bigint is null or w.customer_id = ?::bigint)";
    private static final int LONGEST_NAME = 120;

    private final Sql sql;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    StoredWalks(Sql sql, AuditTrail audit, Clock clock) {
        this.sql = sql;
        this.audit = audit;
        this.clock = clock;
    }

    /** Those in the scope, the latest first. Walks that belong to nobody are not in the scope of one customer. */
    public List<StoredWalk> all(CustomerScope scope) {
        Long only = scope.onlyCustomer();
        return sql.list(
                HEAD + " where" + IN_SCOPE + " order by w.added_at desc, w.id desc", StoredWalks::head, only, only);
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<StoredWalk> find(CustomerScope scope, long id) {
        Long only = scope.onlyCustomer();
        return sql.one(HEAD + " where w.id = ? and" + IN_SCOPE, StoredWalks::head, id, only, only);
    }

    /** The walk itself, and the later one if there is one. */
    public List<Snapshot> snapshots(StoredWalk stored) {
        return sql.one(
                        "select walk, taken_at, later, later_at from stored_walk where id = ?",
                        row -> {
                            Snapshot first = snapshot(row.getBytes("walk"), Sql.instant(row, "taken_at"));
                            byte[] later = row.getBytes("later");
                            return later == null
                                    ? List.of(first)
                                    : List.of(first, snapshot(later, Sql.instant(row, "later_at")));
                        },
                        stored.id())
                .orElseThrow(() -> WrittenProfiles.rejected("id", "this walk is not there any more"));
    }

    private static Snapshot snapshot(byte[] packed, Instant at) {
        return new Snapshot(WalkText.read(unpack(packed)).walk(), at);
    }

    /**
     * Keeps a walk.
     *
     * @throws InputRejected naming the field: name, customerId, walk
     */
    public StoredWalk add(WalkDraft draft) {
        check(draft);
        Walk walk = draft.blank() ? draft.walk().withoutNames() : draft.walk();
        long id = insert(draft, walk);
        StoredWalk stored = find(CustomerScope.everyone(), id).orElseThrow();
        audit.added(
                subject(stored),
                new FieldSet().with("variables", walk.size()).with("names blanked out", draft.blank() ? "yes" : "no"));
        return stored;
    }

    private void check(WalkDraft draft) {
        String name = draft.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME || name.chars().anyMatch(c -> c < ' ')) {
            throw WrittenProfiles.rejected("name", "1 to " + LONGEST_NAME + " characters");
        }
        if (draft.walk().size() == 0) {
            throw WrittenProfiles.rejected("walk", "there is no variable in it");
        }
        boolean known = draft.customerId().isEmpty()
                || sql.one(
                                "select 1 from customer where id = ?",
                                row -> 1,
                                draft.customerId().get())
                        .isPresent();
        if (!known) {
            throw WrittenProfiles.rejected("customerId", "this customer is not there any more");
        }
    }

    private long insert(WalkDraft draft, Walk walk) {
        return sql.one(
                        "insert into stored_walk (customer_id, device_id, name, source, object_id, variables, blanked,"
                                + " remarks, taken_at, walk, author, added_at)"
                                + " values (?::bigint, ?::bigint, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) returning id",
                        row -> row.getLong(1),
                        draft.customerId().orElse(null),
                        draft.deviceId().orElse(null),
                        draft.name().strip(),
                        draft.deviceId().isPresent() ? "DEVICE" : "TEXT",
                        walk.objectId(),
                        walk.size(),
                        draft.blank(),
                        String.join("\n", draft.remarks()),
                        draft.takenAt(),
                        pack(walk.text()),
                        audit.actor().name(),
                        clock.instant())
                .orElseThrow();
    }

    /**
     * Adds a second walk of the same device, taken later, so that counters become rates.
     *
     * @throws InputRejected naming the field walk, when it is from another kind of device or there is nothing in it
     */
    public void addLater(StoredWalk stored, Walk later, Instant takenAt) {
        if (later.size() == 0) {
            throw WrittenProfiles.rejected("walk", "there is no variable in it");
        }
        if (!later.objectId().equals(stored.objectId())) {
            throw WrittenProfiles.rejected(
                    "walk",
                    "its sysObjectID is " + (later.objectId().isEmpty() ? "missing" : later.objectId())
                            + ", that of the first walk is "
                            + (stored.objectId().isEmpty() ? "missing" : stored.objectId())
                            + ": a later walk is of the same device");
        }
        Walk kept = stored.blanked() ? later.withoutNames() : later;
        sql.change(
                "update stored_walk set later = ?, later_at = ? where id = ?", pack(kept.text()), takenAt, stored.id());
        audit.changed(
                subject(stored),
                new FieldSet()
                        .with("later walk", stored.laterAt().map(at -> "there").orElse("")),
                new FieldSet().with("later walk", later.size() + " variables"));
    }

    /** Takes a walk out, and its test case with it. */
    public void remove(StoredWalk stored) {
        sql.change("delete from stored_walk where id = ?", stored.id());
        audit.did("removed", subject(stored));
    }

    static Subject subject(StoredWalk stored) {
        return new Subject(
                "walk", stored.id(), stored.name(), stored.customerId().orElse(null));
    }

    private static byte[] pack(String text) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(packed)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    private static String unpack(byte[] packed) {
        try (GZIPInputStream zip = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            return new String(zip.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static StoredWalk head(ResultSet row) throws SQLException {
        String remarks = row.getString("remarks");
        return new StoredWalk(
                row.getLong("id"),
                Optional.ofNullable(row.getObject("customer_id", Long.class)),
                row.getString("customer"),
                Optional.ofNullable(row.getObject("device_id", Long.class)),
                row.getString("name"),
                row.getString("object_id"),
                row.getInt("variables"),
                row.getBoolean("blanked"),
                remarks.isEmpty() ? List.of() : List.of(remarks.split("\n")),
                Sql.instant(row, "taken_at"),
                Optional.ofNullable(Sql.instant(row, "later_at")),
                row.getString("author"),
                row.getBoolean("test_case"));
    }
}
