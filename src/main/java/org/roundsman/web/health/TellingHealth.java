package org.roundsman.web.health;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.jboss.logging.Logger;
import org.roundsman.notices.Outbox;
import org.roundsman.notices.OutboxState;
import org.roundsman.web.notices.MailWords;
import org.roundsman.web.page.Words;

/** Whether people are told what they should be; works without the database. */
@ApplicationScoped
class TellingHealth {

    private static final Logger LOG = Logger.getLogger(TellingHealth.class);

    private final Outbox outbox;
    private final MailWords mail;

    TellingHealth(Outbox outbox, MailWords mail) {
        this.outbox = outbox;
        this.mail = mail;
    }

    OwnHealth.Group now() {
        String trouble = mail.trouble();
        OwnHealth.Line mails = new OwnHealth.Line("Mails", trouble.isEmpty() ? "go out" : "do not go out", trouble);
        try {
            Map<OutboxState, Long> counts = outbox.counts();
            return new OwnHealth.Group(
                    "telling",
                    "Messages to people",
                    List.of(
                            mails,
                            line(counts, OutboxState.WAITING, "Waiting", "for their time, or for another attempt"),
                            line(counts, OutboxState.DEAD, "Given up", "see Notices, Messages"),
                            line(counts, OutboxState.SENT, "Sent", "of those that are kept")));
        } catch (IllegalStateException e) {
            LOG.debugf("Messages cannot be counted: %s", e.getMessage());
            OwnHealth.Line none = new OwnHealth.Line("Waiting", Words.NOT_AVAILABLE, "the database does not answer");
            return new OwnHealth.Group("telling", "Messages to people", List.of(mails, none));
        }
    }

    private static OwnHealth.Line line(Map<OutboxState, Long> counts, OutboxState state, String name, String meaning) {
        return new OwnHealth.Line(name, Words.count(counts.get(state)), meaning);
    }
}
