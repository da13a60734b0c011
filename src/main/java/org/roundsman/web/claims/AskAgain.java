package org.roundsman.web.claims;

import jakarta.enterprise.context.ApplicationScoped;
import org.jboss.logging.Logger;
import org.roundsman.polling.PollNow;
import org.roundsman.system.SealException;

/** Has a device asked at once, so that it says which unit it is. Nobody waits for the answer: the rounds go on asking. */
@ApplicationScoped
public class AskAgain {

    private static final Logger LOG = Logger.getLogger(AskAgain.class);

    private final PollNow poll;

    AskAgain(PollNow poll) {
        this.poll = poll;
    }

    /** Begins to ask it. */
    public void ask(long deviceId) {
        try {
            poll.poll(deviceId).whenComplete((visit, failure) -> {
                if (failure != null) {
                    LOG.infof("Device %d could not be asked after a replacement: %s", deviceId, failure.getMessage());
                }
            });
        } catch (SealException e) {
            LOG.infof("Device %d could not be asked after a replacement: %s", deviceId, e.getMessage());
        }
    }
}
