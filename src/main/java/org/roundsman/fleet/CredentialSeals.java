package org.roundsman.fleet;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;

/** Seals the secrets of credentials to their places, which are which credentials and which field. Thread-safe. */
final class CredentialSeals {

    /** The secret fields, by the name of their column. */
    enum Field {
        COMMUNITY("credential", "community", "credential", "community"),
        AUTH("credential", "auth_secret", "credential", "auth"),
        PRIV("credential", "priv_secret", "credential", "priv"),
        /** What a webhook's messages are signed with; sealed and opened by notices, known here for the change of the key. */
        WEBHOOK("notice_webhook", "secret", "webhook", "secret");

        /** Those of credentials. */
        static final List<Field> OF_CREDENTIALS = List.of(COMMUNITY, AUTH, PRIV);

        private final String table;
        private final String column;
        private final String thing;
        private final String word;

        Field(String table, String column, String thing, String word) {
            this.table = table;
            this.column = column;
            this.thing = thing;
            this.word = word;
        }

        String table() {
            return table;
        }

        String column() {
            return column;
        }

        /** What it belongs to, such as {@code credential 7}. */
        String owner(long id) {
            return thing + " " + id;
        }

        private byte[] place(long id) {
            return (thing + "/" + id + "/" + word).getBytes(UTF_8);
        }

        /** What earlier versions of the program bound a secret to: its field alone. */
        private byte[] formerPlace() {
            return ("credential " + word).getBytes(UTF_8);
        }
    }

    private final Sealer sealer;

    CredentialSeals(Sealer sealer) {
        this.sealer = sealer;
    }

    /** Sealed for that field of those credentials. */
    byte[] seal(long id, Field field, String secret) {
        return sealer.seal(secret.getBytes(UTF_8), field.place(id));
    }

    /**
     * The secret; empty where there is none.
     *
     * @throws SealException when the key is another one, the value stands in another place, or it is damaged
     */
    String open(long id, Field field, byte[] sealed) {
        if (sealed == null) {
            return "";
        }
        try {
            return new String(sealer.open(sealed, field.place(id)), UTF_8);
        } catch (SealException e) {
            return former(field, sealed, e);
        }
    }

    /** Whether it is bound to its very place, and not as earlier versions did it. */
    boolean inPlace(long id, Field field, byte[] sealed) {
        try {
            return sealed == null || sealer.open(sealed, field.place(id)) != null;
        } catch (SealException e) {
            return false;
        }
    }

    private String former(Field field, byte[] sealed, SealException first) {
        try {
            return new String(sealer.open(sealed, field.formerPlace()), UTF_8);
        } catch (SealException e) {
            throw first;
        }
    }
}
