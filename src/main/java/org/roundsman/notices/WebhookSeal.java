package org.roundsman.notices;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.roundsman.system.Sealer;

/** Seals the secret of a webhook to its place. The change of the key knows these places too: it lives in {@code fleet}. */
final class WebhookSeal {

    private WebhookSeal() {}

    static byte[] seal(Sealer sealer, long webhook, String secret) {
        return sealer.seal(secret.getBytes(UTF_8), place(webhook));
    }

    static String open(Sealer sealer, long webhook, byte[] sealed) {
        return new String(sealer.open(sealed, place(webhook)), UTF_8);
    }

    private static byte[] place(long webhook) {
        return ("webhook/" + webhook + "/secret").getBytes(UTF_8);
    }
}
