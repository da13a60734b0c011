package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.List;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.system.Rows;

/** Sets reports on their way: settles how they look, and puts one mail to each recipient into the outbox. */
public final class Way {

    private Way() {}

    /**
     * Within a transaction.
     *
     * @param report in a state from which it may be sent
     * @return whether it still was in that state
     */
    public static boolean set(Rows rows, KeptReport report, List<String> recipients, Instant now, Instant giveUp) {
        Looks.Ids brands = new Looks(rows).settle(report, now);
        boolean moved = new QueueTable(rows).settle(report.id(), report.state(), brands.firm(), brands.customer(), now);
        if (moved) {
            new MailTable(rows).add(report.id(), recipients, now, giveUp);
        }
        return moved;
    }
}
