package org.roundsman.people;

import io.quarkus.panache.common.Sort;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jboss.logging.Logger;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Accounts, as their owner looks after them. Blocks on the database. */
@ApplicationScoped
public class Accounts {

    private static final Logger LOG = Logger.getLogger(Accounts.class);
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{Nd}._@-]{2,60}");

    private final Passwords passwords;
    private final Remembered remembered;
    private final PersonalTokens tokens;
    private final AuditTrail audit;
    private final Clock clock;

    Accounts(Passwords passwords, Remembered remembered, PersonalTokens tokens, AuditTrail audit, Clock clock) {
        this.passwords = passwords;
        this.remembered = remembered;
        this.tokens = tokens;
        this.audit = audit;
        this.clock = clock;
    }

    /** Everybody, by name. */
    @Transactional
    public List<Person> all() {
        return Account.<Account>listAll(Sort.by("name")).stream()
                .map(account -> account.person(clock.instant()))
                .toList();
    }

    /** The account with that id. */
    @Transactional
    public Optional<Person> byId(long id) {
        return Account.<Account>findByIdOptional(id).map(account -> account.person(clock.instant()));
    }

    /**
     * Makes an account with a random password that is to be changed at the first sign-in.
     *
     * @return that password, which is kept nowhere
     * @throws PeopleException for a bad name, a name in use, or a viewer without a customer
     */
    @Transactional
    public String add(NewPerson person) {
        check(person);
        if (Account.named(person.name()).isPresent()) {
            throw new PeopleException("name", "The sign-in name “" + person.name() + "” is in use.");
        }
        String password = passwords.random();
        persist(person, password, true);
        LOG.infof("Account %s added as %s", LogText.of(person.name()), person.role());
        return password;
    }

    /**
     * Makes that account unless one of its name is there already, which is then left as it is.
     *
     * @param mustChange whether the password is to be changed at the first sign-in
     * @return whether an account was made
     * @throws PeopleException when the account cannot be made or the password is not good enough
     */
    @Transactional
    public boolean ensure(NewPerson person, String password, boolean mustChange) {
        check(person);
        PasswordRules.fault(password, person.name()).ifPresent(fault -> {
            throw new PeopleException("password", fault);
        });
        if (Account.named(person.name()).isPresent()) {
            return false;
        }
        persist(person, password, mustChange);
        return true;
    }

    private void persist(NewPerson person, String password, boolean mustChange) {
        Account account = new Account();
        account.name = person.name();
        account.shownName = person.shownName().strip();
        account.role = person.role();
        account.customerId = person.customerId().orElse(null);
        account.passwordHash = passwords.hash(password);
        account.mustChange = mustChange;
        account.createdAt = clock.instant();
        account.persistAndFlush();
        audit.added(account.subject(), fields(account));
    }

    private static FieldSet fields(Account account) {
        return new FieldSet()
                .with("sign-in name", account.name)
                .with("name on pages", account.shownName)
                .with("role", account.role.word())
                .with("password", "set");
    }

    private static void check(NewPerson person) {
        if (!NAME.matcher(person.name()).matches()) {
            throw new PeopleException(
                    "name", "A sign-in name has 2 to 60 letters, digits, dots, hyphens, underscores or @ signs.");
        }
        if (person.shownName().length() > 100) {
            throw new PeopleException("shownName", "A name on pages has at most 100 characters.");
        }
        if ((person.role() == Role.VIEWER) != person.customerId().isPresent()) {
            throw new PeopleException("customer", "A viewer, and nobody else, belongs to one customer.");
        }
    }

    /** Whether an owner is there who can sign in. */
    @Transactional
    public boolean hasOwner() {
        return Account.count("role = ?1 and disabled = false", Role.OWNER) > 0;
    }

    /**
     * Ends the account's sign-ins and personal tokens, and lets it sign in no more.
     *
     * @throws PeopleException when it is the last owner's
     */
    @Transactional
    public void disable(long id) {
        Account account = Account.findById(id);
        if (account.role == Role.OWNER && Account.count("role = ?1 and disabled = false", Role.OWNER) <= 1) {
            throw new PeopleException("", "The last owner cannot be disabled: nobody could look after people then.");
        }
        account.disabled = true;
        end(account);
        audit.did("disabled", account.subject());
        LOG.infof("Account %s disabled", LogText.of(account.name));
    }

    @Transactional
    public void enable(long id) {
        Account account = Account.findById(id);
        account.disabled = false;
        audit.did("enabled", account.subject());
        LOG.infof("Account %s enabled", LogText.of(account.name));
    }

    /** Takes the lock of repeated failures off. */
    @Transactional
    public void unlock(long id) {
        Account account = Account.findById(id);
        account.failures = 0;
        account.lockedUntil = null;
        audit.did("unlocked", account.subject());
        LOG.infof("Account %s unlocked", LogText.of(account.name));
    }

    /**
     * Gives the account a random password that is to be changed at the next sign-in, and ends its sign-ins and
     * personal tokens.
     *
     * @return that password, which is kept nowhere
     */
    @Transactional
    public String resetPassword(long id) {
        Account account = Account.findById(id);
        String password = passwords.random();
        account.passwordHash = passwords.hash(password);
        account.mustChange = true;
        account.failures = 0;
        account.lockedUntil = null;
        end(account);
        audit.did("password reset", account.subject());
        LOG.infof("Password of %s reset", LogText.of(account.name));
        return password;
    }

    private void end(Account account) {
        SignIn.delete("account.id", account.id);
        tokens.end(account);
        remembered.forget();
    }
}
