package org.roundsman.dispatch.work;

import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.mail.Bounce;

/** Finds the mail that a mail server speaks of, and notes what became of it; nothing where it is none of a report. */
public final class Bounced implements Consumer<Bounce> {

    private final Parts parts;

    public Bounced(Parts parts) {
        this.parts = parts;
    }

    @Override
    public void accept(Bounce bounce) {
        MailTable mails = new MailTable(parts.store().rows());
        Optional<Long> mail = key(bounce.key()).flatMap(mails::ofKey);
        if (mail.isEmpty()) {
            return;
        }
        String why = bounce.why().isEmpty() ? "the other mail server gave no reason" : bounce.why();
        switch (bounce.action()) {
            case FAILED -> mails.bounced(mail.get(), why);
            case DELAYED -> mails.delayed(mail.get(), "delayed: " + why);
        }
    }

    private static Optional<UUID> key(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // the key of a mail that is none of ours
        }
    }
}
