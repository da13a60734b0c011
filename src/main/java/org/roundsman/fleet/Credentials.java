package org.roundsman.fleet;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.system.Sealer;

/** Reads and changes SNMP credentials. Secrets go in and come out for the poller only; no page shows them again. */
@ApplicationScoped
@Transactional
public class Credentials {

    private static final byte[] COMMUNITY = "credential community".getBytes(UTF_8);
    private static final byte[] AUTH = "credential auth".getBytes(UTF_8);
    private static final byte[] PRIV = "credential priv".getBytes(UTF_8);

    private final Sealer sealer;
    private final Event<FleetChanged> changed;

    @Inject
    Credentials(Sealer sealer, Event<FleetChanged> changed) {
        this.sealer = sealer;
        this.changed = changed;
    }

    /** Those that devices of the customer may use, or (null) all of them; with the customer loaded. */
    public List<Credential> usableBy(Long customerId) {
        return Credential.list(
                "from Credential k left join fetch k.customer c where :of is null or c is null or c.id = :of"
                        + " order by lower(k.name)",
                Parameters.with("of", customerId));
    }

    public Optional<Credential> find(long id) {
        return Credential.<Credential>find("from Credential k left join fetch k.customer where k.id = ?1", id)
                .firstResultOptional();
    }

    /** How many devices use these credentials. */
    public long users(long id) {
        return Device.count("credential.id", id);
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Credential add(CredentialDraft draft) {
        Credential credential = new Credential();
        fill(credential, draft, null);
        credential.persist();
        changed.fire(new FleetChanged());
        return credential;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Credential change(long id, CredentialDraft draft) {
        Credential credential = Credential.<Credential>findByIdOptional(id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "these credentials are not there any more")));
        fill(credential, draft, credential);
        changed.fire(new FleetChanged());
        return credential;
    }

    /**
     * Opens the secrets.
     *
     * @throws RuntimeException when the key file is not the one they were sealed with
     */
    public CredentialSecrets secrets(Credential credential) {
        return new CredentialSecrets(
                credential.version,
                open(credential.sealedCommunity, COMMUNITY),
                credential.userName,
                credential.level,
                credential.authProtocol,
                open(credential.sealedAuth, AUTH),
                credential.privProtocol,
                open(credential.sealedPriv, PRIV));
    }

    private void fill(Credential credential, CredentialDraft draft, Credential before) {
        InputCheck check = new InputCheck();
        draft.check(check, before);
        Customer customer = draft.customerId() == null ? null : Customer.findById(draft.customerId());
        check.that("customerId", draft.customerId() == null || customer != null, "this customer is not there any more");
        check.done();
        String name = draft.name().strip();
        check.that("name", !taken(credential.id, customer, name), "there are credentials of this name already");
        check.done();
        credential.customer = customer;
        credential.name = name;
        credential.version = (short) draft.version();
        credential.userName = draft.version() == 3 ? draft.userName().strip() : "";
        credential.level = draft.version() == 3 ? draft.level() : "NO_AUTH";
        credential.authProtocol = draft.authenticates() ? draft.authProtocol() : "";
        credential.privProtocol = draft.encrypts() ? draft.privProtocol() : "";
        credential.sealedCommunity =
                draft.version() == 3 ? null : seal(draft.community(), COMMUNITY, credential.sealedCommunity);
        credential.sealedAuth = draft.authenticates() ? seal(draft.authPassword(), AUTH, credential.sealedAuth) : null;
        credential.sealedPriv = draft.encrypts() ? seal(draft.privPassword(), PRIV, credential.sealedPriv) : null;
    }

    private static boolean taken(Long id, Customer customer, String name) {
        return Credential.count(
                        "lower(name) = lower(?1) and (?2 is null or id <> ?2) and customer is not distinct from ?3",
                        name,
                        id,
                        customer)
                > 0;
    }

    private byte[] seal(String secret, byte[] context, byte[] before) {
        return secret == null || secret.isEmpty() ? before : sealer.seal(secret.getBytes(UTF_8), context);
    }

    private String open(byte[] sealed, byte[] context) {
        return sealed == null ? "" : new String(sealer.open(sealed, context), UTF_8);
    }
}
