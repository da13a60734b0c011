package org.roundsman.web.health;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.roundsman.traps.ReceiverState;
import org.roundsman.traps.StrangeSenders;
import org.roundsman.traps.TrapReceiver;
import org.roundsman.web.page.Words;

/** How traps and informs come in, and who sends some that are not let in. */
@ApplicationScoped
class NoticeHealth {

    private static final int SHOWN = 100;

    private final TrapReceiver receiver;
    private final StrangeSenders strangers;
    private final Meters meters;
    private final Clock clock;

    NoticeHealth(TrapReceiver receiver, StrangeSenders strangers, Meters meters, Clock clock) {
        this.receiver = receiver;
        this.strangers = strangers;
        this.meters = meters;
        this.clock = clock;
    }

    /** An address whose messages were not let in. */
    record Stranger(String address, String reason, String version, String messages, String first, String last) {}

    /**
     * All of it.
     *
     * @param trouble why nothing comes in, or empty
     * @param more a sentence about addresses that are not shown, or empty
     */
    record Notices(String trouble, OwnHealth.Group group, List<Stranger> strangers, String more) {}

    Notices now() {
        Instant now = clock.instant();
        ReceiverState state = receiver.state();
        return new Notices(
                state instanceof ReceiverState.Blocked blocked ? blocked.why() : "",
                new OwnHealth.Group("notices", "Traps and informs since the start", lines(state, now)),
                strangers.latest(SHOWN).stream()
                        .map(line -> stranger(line, now))
                        .toList(),
                more());
    }

    private List<OwnHealth.Line> lines(ReceiverState state, Instant now) {
        return List.of(
                new OwnHealth.Line("Port", words(state, now), "where devices send them to"),
                line("Messages", "received", "that came in at that port"),
                line("On timelines", "stored", "notifications put there one by one"),
                line("Summed", "summed", "their device sends too many; they become one event now and then"),
                line("Without a name", "unnamed", "no standard and no profile names them; counted per device"),
                line("Come again", "repeated", "the same message once more; an inform is answered again"),
                line("Informs answered", "answered", "so that the device does not send them again"),
                line("Not let in", "refused", "listed below by address and reason"),
                line("Not looked at", "dropped", "their address sends too many"),
                line("Lost", "lost", "too many waited while the database was away"));
    }

    private OwnHealth.Line line(String name, String meter, String meaning) {
        return new OwnHealth.Line(name, meters.count("roundsman.traps." + meter), meaning);
    }

    private static String words(ReceiverState state, Instant now) {
        if (state instanceof ReceiverState.Listening listening) {
            return "UDP " + listening.port() + " on " + listening.address();
        }
        if (state instanceof ReceiverState.Blocked blocked) {
            return "cannot be used, " + Words.ago(blocked.since(), now);
        }
        return "switched off";
    }

    private static Stranger stranger(StrangeSenders.Line line, Instant now) {
        return new Stranger(
                line.address(),
                line.reason().text(),
                switch (line.version()) {
                    case 1 -> "v1";
                    case 2 -> "v2c";
                    case 3 -> "v3";
                    default -> "none";
                },
                Words.count(line.messages()),
                Words.ago(line.first(), now),
                Words.ago(line.last(), now));
    }

    private String more() {
        int hidden = Math.max(0, strangers.size() - SHOWN);
        long others = strangers.others();
        if (hidden == 0 && others == 0) {
            return "";
        }
        return (hidden == 0 ? "" : Words.many(hidden, "quieter line is", "quieter lines are") + " not shown. ")
                + (others == 0
                        ? ""
                        : Words.many(others, "message", "messages") + " of further addresses came besides.");
    }
}
