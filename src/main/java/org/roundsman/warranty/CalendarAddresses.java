package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.system.StorableText;
import org.roundsman.warranty.store.CalendarTable;

/**
 * Private addresses at which calendars read what ends when. Whoever knows one needs no sign-in, so it holds 256 random bits,
 * is shown once, and ends with its account: when that is disabled, or may not see every customer any more.
 */
@ApplicationScoped
@Transactional
public class CalendarAddresses {

    private static final int LONGEST_NAME = 60;
    private static final Pattern SECRET = Pattern.compile("[A-Za-z0-9_-]{43}");
    private static final SecureRandom RANDOM = new SecureRandom();

    private final CalendarTable table;
    private final AuditTrail audit;
    private final WarrantyConfig config;
    private final Clock clock;

    @Inject
    CalendarAddresses(DataSource database, AuditTrail audit, WarrantyConfig config, Clock clock) {
        this.table = new CalendarTable(database);
        this.audit = audit;
        this.config = config;
        this.clock = clock;
    }

    /** A person's own, the newest first. */
    public List<CalendarAddress> of(long accountId) {
        return table.of(accountId);
    }

    /** Those of everybody else that are good, by person. For the owner. */
    public List<CalendarAddress> goodOfOthers(long accountId) {
        return table.goodOfOthers(accountId);
    }

    /**
     * Makes an address for a person of the firm.
     *
     * @param customerId empty for every customer that the scope includes; then the scope must be everyone
     * @return the secret in the address, which is kept nowhere
     * @throws InputRejected naming {@code name}, {@code customer}, or {@code ""} when the person may have none
     */
    public String add(CustomerScope scope, long accountId, String name, OptionalLong customerId) {
        String called = name == null ? "" : name.strip();
        if (called.isEmpty()
                || called.length() > LONGEST_NAME
                || called.chars().anyMatch(Character::isISOControl)
                || !StorableText.keeps(called)) {
            throw refused("name", "give it a name of at most " + LONGEST_NAME + " characters");
        }
        if (!table.holdUsable(accountId)) {
            throw refused("", "This account may have no calendar address.");
        }
        OptionalLong only = scope.onlyCustomer() == null ? customerId : OptionalLong.of(scope.onlyCustomer());
        if (only.isPresent()
                && (!scope.includes(only.getAsLong())
                        || table.customer(only.getAsLong()).isEmpty())) {
            throw refused("customer", "choose one of the customers");
        }
        List<CalendarAddress> good =
                table.of(accountId).stream().filter(CalendarAddress::good).toList();
        if (good.stream().anyMatch(one -> one.name().equalsIgnoreCase(called))) {
            throw refused("name", "you have an address of this name already; end that one, or choose another name");
        }
        if (good.size() >= config.calendarsPerPerson()) {
            throw refused("", "You have " + good.size() + " addresses. End one that you need no more.");
        }
        String secret = fresh();
        CalendarAddress made = table.add(accountId, called, hash(secret), only, clock.instant());
        audit.added(
                subject(made), new FieldSet().with("customer", made.customer().isEmpty() ? "all" : made.customer()));
        return secret;
    }

    /**
     * Ends an address for good: a person's own, or anybody's.
     *
     * @param anybody whether the person may end those of others
     * @return whether there is such an address for that person
     */
    public boolean revoke(long accountId, boolean anybody, long id) {
        Optional<CalendarAddress> found = table.find(id).filter(one -> anybody || one.accountId() == accountId);
        found.filter(CalendarAddress::good).ifPresent(this::end);
        return found.isPresent();
    }

    private void end(CalendarAddress one) {
        table.revoke(one.id(), clock.instant());
        audit.did("revoked", subject(one));
    }

    /** Ends the addresses of accounts that are disabled or may not see every customer any more. */
    void endOfLostRights() {
        table.lost().forEach(this::end);
    }

    /** Whom the address of that secret tells of, and notes that it was used; empty when it is not good. */
    Optional<CustomerScope> open(String secret) {
        if (!SECRET.matcher(secret).matches()) {
            return Optional.empty();
        }
        return table.use(hash(secret), clock.instant())
                .map(one -> one.customerId().isPresent()
                        ? CustomerScope.of(one.customerId().getAsLong())
                        : CustomerScope.everyone());
    }

    private static Subject subject(CalendarAddress one) {
        OptionalLong customer = one.customerId();
        return new Subject(
                "calendar address", one.id(), one.name(), customer.isPresent() ? customer.getAsLong() : null);
    }

    private static InputRejected refused(String field, String why) {
        return new InputRejected(Map.of(field, why));
    }

    private static String fresh() {
        byte[] bits = new byte[32];
        RANDOM.nextBytes(bits);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bits);
    }

    private static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.US_ASCII));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }
}
