package org.roundsman.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.Customers;
import org.roundsman.shared.Page;

/** Personal tokens, as their persons and the owner look after them. Blocks on the database. */
@ApplicationScoped
public class PersonalTokens {

    private static final Logger LOG = Logger.getLogger(PersonalTokens.class);
    private static final int LONGEST_NAME = 60;

    /** So many good tokens a person may hold: more of them are a sign of a program that makes them. */
    private static final int MOST = 50;

    private final PeopleSettings settings;
    private final Customers customers;
    private final AuditTrail audit;
    private final Clock clock;

    PersonalTokens(PeopleSettings settings, Customers customers, AuditTrail audit, Clock clock) {
        this.settings = settings;
        this.customers = customers;
        this.audit = audit;
        this.clock = clock;
    }

    /** A person's own, the newest first. */
    @Transactional
    public List<HeldToken> of(long accountId) {
        return held(PersonalToken.list("account.id = ?1 order by id desc", accountId));
    }

    /**
     * Those of everybody but one, by person, the newest first. For the owner.
     *
     * @param page from 1; one beyond the last gives the last
     */
    @Transactional
    public Page<HeldToken> ofOthers(long accountId, int page, int size) {
        long total = PersonalToken.count("account.id <> ?1", accountId);
        int last = new Page<>(List.of(), 1, size, total).last();
        int number = Math.min(page, last);
        List<PersonalToken> found = PersonalToken.<PersonalToken>find(
                        "account.id <> ?1 order by lower(account.name), id desc", accountId)
                .page(number - 1, size)
                .list();
        return new Page<>(held(found), number, size, total);
    }

    private static List<HeldToken> held(List<PersonalToken> tokens) {
        return tokens.stream().map(PersonalToken::held).toList();
    }

    /** How many days a token is good for where nobody says otherwise, and at most. */
    public int usualDays() {
        return settings.tokenDays();
    }

    public int mostDays() {
        return settings.tokenDaysMost();
    }

    /**
     * Makes a token for a person.
     *
     * @return the token, which is kept nowhere
     * @throws PeopleException naming the field to mend: name, scopes, days or customer
     */
    @Transactional
    public String add(SignedIn person, NewToken wanted) {
        // The account stays locked until the commit, so that it is not disabled, nor the limit passed, in between.
        Account account = Account.findById(person.accountId(), LockModeType.PESSIMISTIC_WRITE);
        check(account, person, wanted);
        String secret = Tokens.PERSONAL + Tokens.fresh();
        PersonalToken token = new PersonalToken();
        token.account = account;
        token.name = wanted.name().strip();
        token.hash = Tokens.hash(secret);
        token.scopes = TokenScope.stored(withReading(wanted.scopes()));
        token.customerId = wanted.customerId().orElse(null);
        token.createdAt = clock.instant();
        token.expiresAt = token.createdAt.plus(Duration.ofDays(wanted.days()));
        token.persistAndFlush();
        audit.added(token.subject(), fields(token));
        LOG.infof("Token %s of %s made", LogText.of(token.name), LogText.of(account.name));
        return secret;
    }

    private static Set<TokenScope> withReading(Set<TokenScope> scopes) {
        Set<TokenScope> all = EnumSet.of(TokenScope.READ);
        all.addAll(scopes);
        return all;
    }

    private void check(Account account, SignedIn person, NewToken wanted) {
        String name = wanted.name().strip();
        require("name", !name.isEmpty(), "Give the token a name, so that you know it again.");
        require("name", name.length() <= LONGEST_NAME, "A name has at most " + LONGEST_NAME + " characters.");
        require("name", name.chars().noneMatch(Character::isISOControl), "A name holds no control characters.");
        require(
                "days",
                wanted.days() >= 1 && wanted.days() <= mostDays(),
                "A token is good for 1 to " + mostDays() + " days.");
        require(
                "scopes",
                TokenScope.usefulTo(account.role).containsAll(wanted.scopes()),
                "A " + account.role.word() + " may look only.");
        wanted.customerId()
                .ifPresent(id -> require(
                        "customer",
                        customers.find(person.scope(), id).isPresent(),
                        "This customer is not there any more, or not yours to see."));
        require("", !account.disabled, "This account is disabled.");
        require(
                "name",
                PersonalToken.count("account = ?1 and lower(name) = lower(?2) and revokedAt is null", account, name)
                        == 0,
                "You have a token of this name already. Revoke that one, or choose another name.");
        require(
                "",
                PersonalToken.count("account = ?1 and revokedAt is null and expiresAt > ?2", account, clock.instant())
                        < MOST,
                "You have " + MOST + " tokens. Revoke one that you need no more.");
    }

    private static void require(String field, boolean holds, String fault) {
        if (!holds) {
            throw new PeopleException(field, fault);
        }
    }

    private FieldSet fields(PersonalToken token) {
        String may = token.scopeSet().stream().map(TokenScope::word).collect(Collectors.joining(", "));
        return new FieldSet()
                .with("may", may)
                .with("good until", LocalDate.ofInstant(token.expiresAt, ZoneOffset.UTC) + " (UTC)")
                .with("customer", token.customerId == null ? "" : token.customerId);
    }

    /**
     * Ends a token: its person's own, or for the owner anybody's. One that is revoked already stays as it is.
     *
     * @return whether there is such a token for that person
     */
    @Transactional
    public boolean revoke(SignedIn by, long id) {
        PersonalToken token = PersonalToken.findById(id);
        if (token == null || by.role() != Role.OWNER && token.account.id != by.accountId()) {
            return false;
        }
        if (token.revokedAt == null) {
            token.revokedAt = clock.instant();
            audit.did("revoked", token.subject());
            LOG.infof("Token %s of %s revoked", LogText.of(token.name), LogText.of(token.account.name));
        }
        return true;
    }

    /** Ends all tokens of an account, in the transaction of whoever disables it or resets its password. */
    void end(Account account) {
        List<PersonalToken> tokens = PersonalToken.list("account = ?1 and revokedAt is null", account);
        for (PersonalToken token : tokens) {
            token.revokedAt = clock.instant();
            audit.did("revoked", token.subject());
        }
    }
}
