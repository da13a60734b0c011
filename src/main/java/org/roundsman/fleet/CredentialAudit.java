package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;

/** Notes changes of credentials: of a secret only that it was entered, never what it is nor how long. */
@ApplicationScoped
class CredentialAudit {

    private static final String KIND = "credentials";

    private final AuditTrail trail;

    CredentialAudit(AuditTrail trail) {
        this.trail = trail;
    }

    /** The fields before a change. */
    record Before(FieldSet fields, boolean community, boolean auth, boolean priv) {}

    Before before(Credential credential) {
        return new Before(
                fields(credential),
                credential.sealedCommunity != null,
                credential.sealedAuth != null,
                credential.sealedPriv != null);
    }

    void added(Credential credential, CredentialDraft draft) {
        List<FieldChange> changes = new ArrayList<>(fields(credential).asNew());
        changes.addAll(secrets(new Before(null, false, false, false), credential, draft));
        trail.note(List.of(new Note("added", subject(credential), changes)));
    }

    void changed(Before before, Credential credential, CredentialDraft draft) {
        List<FieldChange> changes = new ArrayList<>(FieldSet.between(before.fields(), fields(credential)));
        changes.addAll(secrets(before, credential, draft));
        if (!changes.isEmpty()) {
            trail.note(List.of(new Note("changed", subject(credential), changes)));
        }
    }

    /** Of a change that touched no secret. */
    void changed(Before before, Credential credential) {
        trail.changed(subject(credential), before.fields(), fields(credential));
    }

    void removed(Credential credential) {
        trail.did("removed", subject(credential));
    }

    private static List<FieldChange> secrets(Before before, Credential after, CredentialDraft draft) {
        List<FieldChange> changes = new ArrayList<>();
        add(changes, "community", before.community(), after.sealedCommunity != null, draft.community());
        add(changes, "authentication password", before.auth(), after.sealedAuth != null, draft.authPassword());
        add(changes, "privacy password", before.priv(), after.sealedPriv != null, draft.privPassword());
        return changes;
    }

    private static void add(List<FieldChange> changes, String field, boolean before, boolean after, String entered) {
        if (!after && before) {
            changes.add(new FieldChange(field, "set", ""));
        } else if (after && !before) {
            changes.add(new FieldChange(field, "", "set"));
        } else if (after && entered != null && !entered.isEmpty()) {
            changes.add(new FieldChange(field, "set", "changed"));
        }
    }

    private static Subject subject(Credential credential) {
        return new Subject(
                KIND, credential.id, credential.name, credential.customer == null ? null : credential.customer.id);
    }

    private static FieldSet fields(Credential credential) {
        return new FieldSet()
                .with("name", credential.name)
                .with("for the devices of", credential.owner())
                .with("order", credential.turn)
                .with("version", credential.version == 2 ? "v2c" : "v" + credential.version)
                .with("user", credential.userName)
                .with("security level", credential.version == 3 ? credential.level : "")
                .with("authentication", credential.authProtocol)
                .with("privacy", credential.privProtocol);
    }
}
