package org.roundsman.fleet;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hibernate.exception.ConstraintViolationException;
import org.jboss.logging.Logger;
import org.roundsman.fleet.CredentialSeals.Field;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;

/**
 * Reads and changes SNMP credentials. Secrets go in and come out for the poller only; no page shows them again. What is
 * returned has its site and customer loaded.
 *
 * <p>Credentials belong to everybody, to one customer or to one site. Those usable at a site are tried the most specific
 * first: the site's own, then the customer's, then everybody's, each group in the order that people gave it.
 */
@ApplicationScoped
@Transactional
public class Credentials {

    private static final Logger LOG = Logger.getLogger(Credentials.class);

    private static final String WHOLE = "from Credential k left join fetch k.customer c left join fetch k.site s";

    private static final String AS_TRIED =
            " order by case when s is not null then 0 when c is not null then 1 else 2 end,"
                    + " lower(c.name), lower(s.name), k.turn, k.id";

    private final CredentialSeals seals;
    private final CredentialAudit audit;
    private final Event<FleetChanged> changed;

    @Inject
    Credentials(Sealer sealer, CredentialAudit audit, Event<FleetChanged> changed) {
        this.seals = new CredentialSeals(sealer);
        this.audit = audit;
        this.changed = changed;
    }

    /** Those that devices of that site may use, in the order in which they are tried; none where there is no such site. */
    public List<Credential> usableAt(long siteId) {
        return Credential.list(
                "select k " + WHOLE + ", Site here where here.id = :here and (c is null or c = here.customer)"
                        + " and (s is null or s = here)" + AS_TRIED,
                Parameters.with("here", siteId));
    }

    /** Those that some device of the customer may use, or (null) all of them, the most specific first. */
    public List<Credential> usableBy(Long customerId) {
        return Credential.list(
                WHOLE + " where :of is null or c is null or c.id = :of" + AS_TRIED, Parameters.with("of", customerId));
    }

    public Optional<Credential> find(long id) {
        return Credential.<Credential>find(WHOLE + " where k.id = ?1", id).firstResultOptional();
    }

    /** How many devices use these credentials. */
    public long users(long id) {
        return Device.count("credential.id", id);
    }

    /** How many devices use each, by id; those that none uses are left out. */
    public Map<Long, Long> usage() {
        Map<Long, Long> usage = new HashMap<>();
        Device.getEntityManager()
                .createQuery("select d.credential.id, count(d) from Device d group by d.credential.id", Object[].class)
                .getResultList()
                .forEach(row -> usage.put((Long) row[0], (Long) row[1]));
        return usage;
    }

    /** How many devices of the fleet are read with weak credentials, and why. */
    public CredentialSummary summary() {
        return CredentialSummary.of(usableBy(null), usage());
    }

    /**
     * Adds credentials, to be tried after those of the same owner.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public Credential add(CredentialDraft draft) {
        Credential credential = new Credential();
        fill(credential, draft, null);
        credential.persistAndFlush();
        audit.added(credential, draft);
        changed.fire(new FleetChanged());
        return credential;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Credential change(long id, CredentialDraft draft) {
        Credential credential = require(id);
        CredentialAudit.Before before = audit.before(credential);
        fill(credential, draft, credential);
        Credential.flush();
        audit.changed(before, credential, draft);
        changed.fire(new FleetChanged());
        return credential;
    }

    /**
     * Removes credentials that nobody uses.
     *
     * @throws InputRejected when something uses them, or there are none of that id
     */
    public void remove(long id) {
        Credential credential = require(id);
        long users = users(id);
        if (users > 0) {
            throw new InputRejected(Map.of(
                    "",
                    Counted.of(users, "device uses", "devices use") + " these credentials: give others there first"));
        }
        audit.removed(credential);
        credential.delete();
        try {
            Credential.flush();
        } catch (ConstraintViolationException e) {
            throw new InputRejected(Map.of("", "something began to use these credentials just now"));
        }
        changed.fire(new FleetChanged());
    }

    /** Lets these be tried one place earlier among those of the same owner; the first stays where it is. */
    public Credential moveUp(long id) {
        return move(id, -1);
    }

    /** Lets these be tried one place later among those of the same owner; the last stays where it is. */
    public Credential moveDown(long id) {
        return move(id, 1);
    }

    private Credential move(long id, int places) {
        Credential credential = require(id);
        CredentialAudit.Before before = audit.before(credential);
        List<Credential> group = Credential.<Credential>find(
                        "customer is not distinct from ?1 and site is not distinct from ?2 order by turn, id",
                        credential.customer,
                        credential.site)
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .list();
        int from = group.indexOf(credential);
        int to = Math.max(0, Math.min(group.size() - 1, from + places));
        group.add(to, group.remove(from));
        for (int i = 0; i < group.size(); i++) {
            group.get(i).turn = i + 1;
        }
        audit.changed(before, credential);
        return credential;
    }

    /**
     * Opens the secrets.
     *
     * @throws SealException when the key file is not the one they were sealed with
     */
    public CredentialSecrets secrets(Credential credential) {
        return new CredentialSecrets(
                credential.version,
                open(credential, Field.COMMUNITY),
                credential.userName,
                credential.level,
                credential.authProtocol,
                open(credential, Field.AUTH),
                credential.privProtocol,
                open(credential, Field.PRIV));
    }

    /** Notes what became known to be weak, and binds secrets to their places that earlier versions did not. */
    void lookAfter() {
        for (Credential credential : Credential.<Credential>listAll()) {
            try {
                CredentialSecrets secrets = secrets(credential);
                for (Field field : Field.OF_CREDENTIALS) {
                    byte[] sealed = sealed(credential, field);
                    if (!seals.inPlace(credential.id, field, sealed)) {
                        store(credential, field, seals.seal(credential.id, field, open(credential, field)));
                    }
                }
                judge(credential, secrets);
            } catch (SealException e) {
                LOG.infof("Nothing can be told about the credentials “%s”: %s", credential.name, e.getMessage());
            }
        }
    }

    private void fill(Credential credential, CredentialDraft draft, Credential before) {
        InputCheck check = new InputCheck();
        draft.check(check, before);
        Site site = draft.siteId() == null ? null : Site.findById(draft.siteId());
        check.that("siteId", draft.siteId() == null || site != null, "this site is not there any more");
        Customer customer = draft.customerId() == null ? null : Customer.findById(draft.customerId());
        check.that("customerId", draft.customerId() == null || customer != null, "this customer is not there any more");
        check.that("siteId", site == null || customer == null || site.customer == customer, "another customer's site");
        check.done();
        belong(
                credential,
                site == null ? customer : site.customer,
                site,
                draft.name().strip());
        credential.version = (short) draft.version();
        credential.userName = draft.version() == 3 ? draft.userName().strip() : "";
        credential.level = draft.version() == 3 ? draft.level() : "NO_AUTH";
        credential.authProtocol = draft.authenticates() ? draft.authProtocol() : "";
        credential.privProtocol = draft.encrypts() ? draft.privProtocol() : "";
        fillSecrets(credential, draft);
    }

    /** Gives the credentials their name and their owner; with another owner they come last in turn. */
    private static void belong(Credential credential, Customer owner, Site site, String name) {
        InputCheck check = new InputCheck();
        check.that("name", !taken(credential.id, owner, site, name), "there are credentials of this name already");
        long left = credential.id == null ? 0 : leftOut(credential.id, owner, site);
        check.that(
                site == null ? "customerId" : "siteId",
                left == 0,
                Counted.of(left, "device", "devices") + " elsewhere must be given other credentials first");
        check.done();
        if (credential.id == null || credential.customer != owner || credential.site != site) {
            credential.turn = lastTurn(owner, site) + 1;
        }
        if (credential.id == null) {
            credential.id = nextId();
        }
        credential.customer = owner;
        credential.site = site;
        credential.name = name;
    }

    private void fillSecrets(Credential credential, CredentialDraft draft) {
        enter(credential, Field.COMMUNITY, draft.version() < 3, draft.community());
        enter(credential, Field.AUTH, draft.authenticates(), draft.authPassword());
        enter(credential, Field.PRIV, draft.encrypts(), draft.privPassword());
        try {
            judge(credential, secrets(credential));
        } catch (SealException e) {
            LOG.infof(
                    "Warnings stay as noted, a kept secret of “%s” does not open: %s", credential.name, e.getMessage());
        }
    }

    private void enter(Credential credential, Field field, boolean wanted, String secret) {
        if (!wanted) {
            store(credential, field, null);
        } else if (secret != null && !secret.isEmpty()) {
            store(credential, field, seals.seal(credential.id, field, secret));
        }
    }

    private static void judge(Credential credential, CredentialSecrets secrets) {
        List<String> words = List.of(secrets.community(), secrets.authPassword(), secrets.privPassword()).stream()
                .filter(word -> !word.isEmpty())
                .toList();
        credential.knownWord = words.stream().anyMatch(KnownWords::has);
        credential.shortSecret = words.stream().anyMatch(word -> word.length() < CredentialDraft.SHORT);
    }

    private String open(Credential credential, Field field) {
        return seals.open(credential.id, field, sealed(credential, field));
    }

    private static byte[] sealed(Credential credential, Field field) {
        return switch (field) {
            case COMMUNITY -> credential.sealedCommunity;
            case AUTH -> credential.sealedAuth;
            case PRIV -> credential.sealedPriv;
            case WEBHOOK -> throw elsewhere(field);
        };
    }

    private static void store(Credential credential, Field field, byte[] sealed) {
        switch (field) {
            case COMMUNITY -> credential.sealedCommunity = sealed;
            case AUTH -> credential.sealedAuth = sealed;
            case PRIV -> credential.sealedPriv = sealed;
            case WEBHOOK -> throw elsewhere(field);
        }
    }

    private static IllegalArgumentException elsewhere(Field field) {
        return new IllegalArgumentException(field + " is no field of credentials");
    }

    private static Credential require(long id) {
        return Credential.<Credential>find(WHOLE + " where k.id = ?1", id)
                .firstResultOptional()
                .orElseThrow(() -> new InputRejected(Map.of("id", "these credentials are not there any more")));
    }

    private static long nextId() {
        return ((Number) Credential.getEntityManager()
                        .createNativeQuery("select nextval(pg_get_serial_sequence('credential', 'id'))")
                        .getSingleResult())
                .longValue();
    }

    private static int lastTurn(Customer customer, Site site) {
        return Credential.<Credential>find(
                        "customer is not distinct from ?1 and site is not distinct from ?2 order by turn desc",
                        customer,
                        site)
                .firstResultOptional()
                .map(last -> last.turn)
                .orElse(0);
    }

    /** How many devices that use these credentials could not do so if they were that owner's. */
    private static long leftOut(long id, Customer customer, Site site) {
        if (customer == null) {
            return 0;
        }
        return site == null
                ? Device.count("credential.id = ?1 and site.customer <> ?2", id, customer)
                : Device.count("credential.id = ?1 and site <> ?2", id, site);
    }

    private static boolean taken(Long id, Customer customer, Site site, String name) {
        return Credential.count(
                        "lower(name) = lower(?1) and (?2 is null or id <> ?2) and customer is not distinct from ?3"
                                + " and site is not distinct from ?4",
                        name,
                        id,
                        customer,
                        site)
                > 0;
    }
}
