package org.roundsman.notices;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.roundsman.mail.Letter;
import org.roundsman.mail.MailFailure;
import org.roundsman.mail.MailServer;
import org.roundsman.notices.send.SendFailure;
import org.roundsman.notices.send.Signature;
import org.roundsman.notices.send.Target;
import org.roundsman.notices.send.WebhookPost;
import org.roundsman.notices.store.OutboxTable.Claimed;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.Rows;
import org.roundsman.notices.text.ContentJson;
import org.roundsman.notices.text.MailText;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;

/** Carries a message by the channel it is for. */
final class Carriers implements Sending.Carrier {

    /** Header with the id of the message: a repeat has the same. */
    static final String ID = "Roundsman-Message";
    /** Header with the time of this attempt, in seconds since 1970-01-01T00:00:00Z. */
    static final String TIME = "Roundsman-Time";
    /** Header with {@link Signature}. */
    static final String HMAC = "Roundsman-Hmac-Sha256";

    private static final String LIST = "notices";

    private final DataSource database;
    private final MailServer mail;
    private final WebhookPost post;
    private final Sealer sealer;
    private final Clock clock;

    Carriers(DataSource database, MailServer mail, WebhookPost post, Sealer sealer, Clock clock) {
        this.database = database;
        this.mail = mail;
        this.post = post;
        this.sealer = sealer;
        this.clock = clock;
    }

    @Override
    public void carry(Claimed message) throws SendFailure {
        if (message.channel().equals(PersonTable.MAIL)) {
            mail(message);
        } else {
            webhook(message, Long.parseLong(message.channel().substring(PersonTable.WEBHOOK.length())));
        }
    }

    private void mail(Claimed message) throws SendFailure {
        String to = Surroundings.whole(database, connection -> PersonTable.choices(connection, message.accountId()))
                .filter(NoticeChoices::mail)
                .map(NoticeChoices::mailAddress)
                .orElseThrow(() -> SendFailure.permanent("mails to this person were switched off", null));
        Letter letter = new Letter(
                to,
                message.content().subject(),
                MailText.plain(message.content()),
                MailText.html(message.content()),
                message.key().toString(),
                message.follows().map(UUID::toString),
                LIST);
        try {
            mail.send(letter);
        } catch (MailFailure e) {
            throw e.permanent()
                    ? SendFailure.permanent(e.getMessage(), e)
                    : e.uncertain() ? SendFailure.uncertain(e.getMessage(), e) : SendFailure.passing(e.getMessage(), e);
        }
    }

    /** Where it leads, and with which secret it is signed. */
    private record Hook(String url, byte[] sealed) {}

    private void webhook(Claimed message, long id) throws SendFailure {
        Hook hook = hook(id).orElseThrow(() -> SendFailure.permanent("this webhook was removed or switched off", null));
        String secret;
        Target target;
        try {
            secret = WebhookSeal.open(sealer, id, hook.sealed());
            target = Target.of(hook.url());
        } catch (SealException | IllegalArgumentException e) {
            throw SendFailure.permanent(e.getMessage(), e);
        }
        byte[] body = ContentJson.body(
                        message.key().toString(),
                        message.follows().map(UUID::toString),
                        message.kind(),
                        message.createdAt(),
                        message.content())
                .getBytes(StandardCharsets.UTF_8);
        long seconds = clock.instant().getEpochSecond();
        Map<String, String> headers = new LinkedHashMap<>();
        headers.put(ID, message.key().toString());
        headers.put(TIME, String.valueOf(seconds));
        headers.put(HMAC, Signature.of(secret.getBytes(StandardCharsets.UTF_8), seconds, body));
        post.send(target, headers, body);
    }

    private Optional<Hook> hook(long id) {
        return Surroundings.whole(
                database,
                connection -> Rows.first(
                        connection,
                        "select url, secret from notice_webhook where id = ? and enabled and secret is not null",
                        row -> new Hook(row.getString(1), row.getBytes(2)),
                        id));
    }
}
