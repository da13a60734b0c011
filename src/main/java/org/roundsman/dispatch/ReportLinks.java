package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.dispatch.store.LinkTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.dispatch.work.Parts;

/**
 * Links that open a report that was sent, without a sign-in. Whoever knows one may read it, so it holds 256 random bits, is shown
 * once, ends by itself, and can be revoked. Making and revoking is audited; opening is counted.
 */
@ApplicationScoped
public class ReportLinks {

    private static final int MOST_DAYS = 90;
    private static final int SECRET_OCTETS = 32;
    private static final Pattern SECRET = Pattern.compile("[A-Za-z0-9_-]{43}");
    private static final SecureRandom RANDOM = new SecureRandom();

    private final Parts parts;

    @Inject
    ReportLinks(Parts parts) {
        this.parts = parts;
    }

    /**
     * One link.
     *
     * @param madeBy sign-in name
     * @param until from then on it opens nothing
     * @param opened how often it was
     * @param openedAt the last time
     */
    public record Link(
            long id,
            Instant madeAt,
            String madeBy,
            Instant until,
            Optional<Instant> revokedAt,
            int opened,
            Optional<Instant> openedAt) {

        /** Whether it opens the report at that time. */
        public boolean good(Instant at) {
            return revokedAt.isEmpty() && until.isAfter(at);
        }
    }

    /** A link that was just made. @param secret stands in its address, and is kept nowhere */
    public record Fresh(Link link, String secret) {}

    /** What a link opens. */
    public record Opened(byte[] pdf, String fileName) {}

    /**
     * Makes a link.
     *
     * @param days for how long, 1 to 90
     * @throws DeskRejected when that cannot be, or the report was not sent
     */
    public Fresh make(long reportId, int days) {
        if (days < 1 || days > MOST_DAYS) {
            throw new DeskRejected("A link lasts from 1 to " + MOST_DAYS + " days.");
        }
        byte[] bits = new byte[SECRET_OCTETS];
        RANDOM.nextBytes(bits);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bits);
        Instant now = parts.now();
        Instant until = now.plus(Duration.ofDays(days));
        String by = parts.audit().actor().name();
        Link link = parts.store().whole((rows, connection) -> {
            Link made = new LinkTable(rows)
                    .add(reportId, hash(secret), by, now, until)
                    .orElseThrow(() -> new DeskRejected("Only a report that was sent can have a link."));
            parts.note(
                    connection,
                    "made a link to",
                    new ShelfTable(rows).find(null, reportId).orElseThrow(),
                    List.of(new FieldChange("link", "", "no. " + made.id() + ", good until " + until)));
            return made;
        });
        return new Fresh(link, secret);
    }

    /** Those of a report, the newest first. */
    public List<Link> of(long reportId) {
        return new LinkTable(parts.store().rows()).of(reportId);
    }

    /** Ends a link for good; nothing happens to one that is not there or ended already. */
    public void revoke(long id) {
        Instant now = parts.now();
        parts.store().whole((rows, connection) -> {
            Optional<Long> report = new LinkTable(rows).revoke(id, now);
            if (report.isPresent()) {
                parts.note(
                        connection,
                        "revoked a link to",
                        new ShelfTable(rows).find(null, report.get()).orElseThrow(),
                        List.of(new FieldChange("link", "no. " + id, "")));
            }
            return null;
        });
    }

    /** The report of the link of that secret; empty when it is unknown, over or revoked, or the report is gone. */
    public Optional<Opened> open(String secret) {
        return secret != null && SECRET.matcher(secret).matches()
                ? new LinkTable(parts.store().rows()).open(hash(secret), parts.now())
                : Optional.empty();
    }

    private static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.US_ASCII));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }
}
