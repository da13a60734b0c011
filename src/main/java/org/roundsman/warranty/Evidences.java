package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.warranty.store.EvidenceTable;
import org.roundsman.warranty.store.PurchaseTable;

/** Files that prove purchases: invoices and delivery notes. */
@ApplicationScoped
@Transactional
public class Evidences {

    /** The largest file, in octets. */
    public static final int LARGEST = 5 * 1024 * 1024;

    /** So many files a purchase may have. */
    public static final int MOST_OF_ONE = 20;

    private static final long MEGABYTE = 1024 * 1024;

    private final EvidenceTable table;
    private final PurchaseTable purchases;
    private final AuditTrail audit;
    private final WarrantyConfig config;
    private final Clock clock;

    @Inject
    Evidences(DataSource database, AuditTrail audit, WarrantyConfig config, Clock clock) {
        this.table = new EvidenceTable(database);
        this.purchases = new PurchaseTable(database);
        this.audit = audit;
        this.config = config;
        this.clock = clock;
    }

    /**
     * A file with its content.
     *
     * @param content at most {@link #LARGEST} octets
     */
    public record Content(Evidence about, byte[] content) {}

    /** Those of a purchase, in the order in which they were attached; none when it lies outside the scope. */
    public List<Evidence> list(CustomerScope scope, long purchaseId) {
        return owned(scope, purchaseId).map(one -> table.of(one.id())).orElse(List.of());
    }

    /** Empty when there is none or its purchase lies outside the scope. */
    public Optional<Content> read(CustomerScope scope, long id) {
        return table.find(id)
                .filter(one -> owned(scope, one.purchaseId()).isPresent())
                .map(one -> new Content(one, table.content(id)));
    }

    /**
     * Attaches a file to a purchase. What it is, its first octets say.
     *
     * @param name as uploaded
     * @throws InputRejected naming {@code file} when it cannot be taken, {@code id} when the purchase is not there
     */
    public Evidence attach(CustomerScope scope, long purchaseId, String name, byte[] content) {
        Purchase purchase = purchases
                .hold(purchaseId)
                .filter(one -> scope.includes(one.customerId()))
                .orElseThrow(() -> new InputRejected(Map.of("id", "this purchase is not there any more")));
        EvidenceKind kind = checked(content);
        String sha256 = sha256(content);
        room(purchase, content, sha256);
        Evidence wanted = new Evidence(
                0,
                purchaseId,
                FileNames.safe(name, kind),
                kind,
                content.length,
                sha256,
                audit.actor().name(),
                clock.instant());
        Evidence made = table.add(wanted, content);
        audit.note(List.of(new Note(
                "attached evidence", Purchases.subject(purchase), fields(made).asNew())));
        return made;
    }

    private static EvidenceKind checked(byte[] content) {
        if (content.length == 0) {
            throw refused("choose a file that is not empty");
        }
        if (content.length > LARGEST) {
            throw refused("this file is larger than 5 MB, which is the most");
        }
        return EvidenceKind.of(content)
                .orElseThrow(() -> refused("this is neither a PDF nor a PNG or JPEG picture, whatever its name says"));
    }

    private void room(Purchase purchase, byte[] content, String sha256) {
        List<Evidence> there = table.of(purchase.id());
        there.stream().filter(one -> one.sha256().equals(sha256)).findFirst().ifPresent(same -> {
            throw refused("this very file is attached already, as " + same.name());
        });
        if (there.size() >= MOST_OF_ONE) {
            throw refused("this purchase has " + MOST_OF_ONE + " files already, which is the most");
        }
        long most = config.evidencePerCustomer() * MEGABYTE;
        if (table.octetsOf(purchase.customerId()) + content.length > most) {
            throw refused("the files of this customer would take more than " + config.evidencePerCustomer()
                    + " MB together, which is the most; remove one that is needed no more");
        }
    }

    /**
     * Removes a file.
     *
     * @return the purchase that it was attached to; empty when it is not there or lies outside the scope
     */
    public Optional<Purchase> remove(CustomerScope scope, long id) {
        Optional<Evidence> found = table.find(id);
        Optional<Purchase> purchase = found.flatMap(one -> owned(scope, one.purchaseId()));
        purchase.ifPresent(owner -> {
            table.remove(id);
            audit.note(List.of(new Note(
                    "removed evidence",
                    Purchases.subject(owner),
                    FieldSet.between(fields(found.get()), new FieldSet()))));
        });
        return purchase;
    }

    private Optional<Purchase> owned(CustomerScope scope, long purchaseId) {
        return purchases.find(purchaseId).filter(one -> scope.includes(one.customerId()));
    }

    private static FieldSet fields(Evidence one) {
        return new FieldSet()
                .with("file", one.name())
                .with("octets", one.octets())
                .with("SHA-256", one.sha256());
    }

    private static InputRejected refused(String why) {
        return new InputRejected(Map.of("file", why));
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }
}
