package org.roundsman.web.notices;

import jakarta.enterprise.context.ApplicationScoped;
import org.roundsman.mail.MailServer;
import org.roundsman.mail.MailState;

/** Whether mails go out, in words. */
@ApplicationScoped
public class MailWords {

    private final MailServer server;

    MailWords(MailServer server) {
        this.server = server;
    }

    /** Why no mail goes out; empty where it does. */
    public String trouble() {
        MailState state = server.state();
        if (state instanceof MailState.Off) {
            return "No mail server is set up, so no mails go out and none wait. The operator names one by"
                    + " roundsman.mail.host; webhooks work without.";
        }
        return state instanceof MailState.Misset misset ? "No mails go out: " + misset.why() + "." : "";
    }
}
