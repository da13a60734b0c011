package org.roundsman.snmp.plan;

import org.roundsman.measure.Outcome;
import org.roundsman.snmp.session.Request;

/**
 * Finds out why an SNMPv3 agent that told us its engine ID stays silent when the request is encrypted. Some agents drop
 * what they cannot decrypt without a Report. When such an agent answers a request that is signed but not encrypted, and
 * then stays silent once more when the request is encrypted, the privacy password or protocol is wrong. Only asked of
 * agents that never answered an encrypted request, so that an outage is not taken for it.
 */
final class PrivacyDoubt {

    private final Errand errand;
    private final Request request;
    private final Runnable understood;
    private final Runnable settled;

    private PrivacyDoubt(Errand errand, Request request, Runnable understood, Runnable settled) {
        this.understood = understood;
        this.errand = errand;
        this.request = request;
        this.settled = settled;
    }

    /**
     * Asks, when there is a doubt.
     *
     * @param understood runs when the agent answers an encrypted request after all
     * @param settled runs otherwise; the errand's outcome is the right one then
     */
    static void settle(Errand errand, Request request, Runnable understood, Runnable settled) {
        if (errand.outcome() == Outcome.NO_REPLY && errand.doubtsPrivacy()) {
            new PrivacyDoubt(errand, request, understood, settled).askSigned();
        } else {
            settled.run();
        }
    }

    private void askSigned() {
        errand.askSigned(request, alive -> {
            if (alive) {
                askAgain();
            } else {
                settled.run();
            }
        });
    }

    private void askAgain() {
        errand.ask(request, pdu -> understood.run(), () -> {
            if (errand.doubtsPrivacy()) {
                errand.refused(Outcome.PRIVACY_FAILED);
            }
            settled.run();
        });
    }
}
