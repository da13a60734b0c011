package org.roundsman.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditTrail;

/** Signing in and out. Blocks on the database and on hashing; call it from worker threads only. */
@ApplicationScoped
public class SignIns {

    private static final Logger LOG = Logger.getLogger(SignIns.class);

    private final Passwords passwords;
    private final PeopleSettings settings;
    private final Remembered remembered;
    private final AuditTrail audit;
    private final Clock clock;

    SignIns(Passwords passwords, PeopleSettings settings, Remembered remembered, AuditTrail audit, Clock clock) {
        this.passwords = passwords;
        this.settings = settings;
        this.remembered = remembered;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Tries a name and a password.
     *
     * @param from address of the browser, for the log
     */
    public SignInResult signIn(String name, String password, String from) {
        try {
            return passwords.oneOfFew(() -> QuarkusTransaction.requiringNew().call(() -> tried(name, password, from)));
        } catch (Passwords.TooBusy e) {
            LOG.warnf("Sign-in of %s from %s put off: too many at once", LogText.of(name), LogText.of(from));
            return new SignInResult.Busy();
        }
    }

    private SignInResult tried(String name, String password, String from) {
        // The row stays locked while the password is checked, so that parallel guesses are counted one by one.
        Account account = Account.<Account>find("lower(name) = lower(?1)", name)
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .firstResult();
        Instant now = clock.instant();
        boolean fits = passwords.fits(password, account == null ? null : account.passwordHash);
        return account == null ? refused(name, from, "unknown name") : judge(account, fits, now, from);
    }

    private SignInResult judge(Account account, boolean fits, Instant now, String from) {
        Lockout lockout = new Lockout(settings.failures(), settings.lockedFor());
        if (account.disabled) {
            return refused(account.name, from, "account disabled");
        }
        if (lockout.locked(account, now)) {
            return refused(account.name, from, "account locked");
        }
        if (!fits) {
            lockout.failed(account, now);
            if (lockout.locked(account, now)) {
                lockedOut(account, from);
            }
            return refused(account.name, from, "wrong password, failure " + account.failures);
        }
        lockout.clear(account);
        LOG.infof("Sign-in of %s from %s", LogText.of(account.name), LogText.of(from));
        return new SignInResult.Welcome(begin(account, now), SignedIn.of(account));
    }

    /** Nobody is signed in, so nobody stands behind it: only the address tells. */
    private void lockedOut(Account account, String from) {
        Actor unknown = new Actor(Actor.itself().name(), null, Actor.Via.PAGE, "", from);
        audit.as(unknown, () -> {
            audit.did("locked after wrong passwords", account.subject());
            return null;
        });
    }

    private static SignInResult refused(String name, String from, String why) {
        LOG.warnf("Sign-in of %s from %s refused: %s", LogText.of(name), LogText.of(from), why);
        return new SignInResult.Refused();
    }

    private String begin(Account account, Instant now) {
        String token = Tokens.fresh();
        SignIn signIn = new SignIn();
        signIn.tokenHash = Tokens.hash(token);
        signIn.account = account;
        signIn.startedAt = now;
        signIn.seenAt = now;
        signIn.persist();
        return token;
    }

    /** Who holds that token; empty when it is unknown, has run out, or the account was disabled. */
    Optional<SignedIn> holder(String token) {
        return remembered.holder(token);
    }

    /** Ends the sign-in with that token; an unknown token is no error. */
    @Transactional
    public void signOut(String token) {
        SignIn.deleteById(Tokens.hash(token));
        remembered.forget();
    }

    /**
     * Changes a person's own password and ends that person's other sign-ins.
     *
     * @return the token of a fresh sign-in, to replace the one in use
     * @throws PeopleException when the old password is wrong or the new one is not good enough
     */
    public String changePassword(long accountId, String old, String fresh) {
        try {
            return passwords.oneOfFew(
                    () -> QuarkusTransaction.requiringNew().call(() -> changed(accountId, old, fresh)));
        } catch (Passwords.TooBusy e) {
            throw new PeopleException("", "Too many people sign in at this moment. Try again in a minute.");
        }
    }

    private String changed(long accountId, String old, String fresh) {
        Account account = Account.findById(accountId, LockModeType.PESSIMISTIC_WRITE);
        if (!passwords.fits(old, account.passwordHash)) {
            throw new PeopleException("old", "This is not your present password.");
        }
        if (old.equals(fresh)) {
            throw new PeopleException("password", "The new password is the old one.");
        }
        PasswordRules.fault(fresh, account.name).ifPresent(fault -> {
            throw new PeopleException("password", fault);
        });
        account.passwordHash = passwords.hash(fresh);
        account.mustChange = false;
        SignIn.delete("account.id", accountId);
        remembered.forget();
        audit.note(List.of(new AuditTrail.Note(
                "changed", account.subject(), List.of(new AuditEntry.FieldChange("password", "set", "changed")))));
        LOG.infof("Password of %s changed", LogText.of(account.name));
        return begin(account, clock.instant());
    }
}
