package org.roundsman.alarms.life;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.OperatorState;
import org.roundsman.fleet.InputRejected;

/**
 * What people's deeds make of an alarm (RFC 8632, operator states). None of them clears or raises it. Taking an alarm
 * acknowledges it too; giving it back leaves it as new. While it is shelved only the shelf can be changed, and notes added.
 * Once it is cleared nobody can acknowledge, take, shelve or close it any more.
 */
public final class HandlingRules {

    /** Longest text of a note or reason. */
    public static final int LONGEST_TEXT = 4_000;

    /** Longest time on the shelf. */
    public static final Duration LONGEST_SHELF = Duration.ofDays(90);

    private HandlingRules() {}

    /**
     * The handling after a deed; the same where the deed changes none.
     *
     * @param who does it
     * @throws InputRejected where it cannot be done, with the reason by field
     */
    public static Handling after(Handling before, Deed deed, String who, Instant now) {
        check(before, deed, now);
        boolean same = before.state() == target(deed);
        return switch (deed.kind()) {
            case ACK, CLOSE -> same ? before : before.with(target(deed), who, deed.text());
            case REOPEN -> before.with(OperatorState.NONE, who, deed.text());
            case TAKE ->
                (before.state() == OperatorState.ACK ? before : before.with(OperatorState.ACK, who, "")).takenBy(who);
            case RELEASE -> released(before, who);
            case NOTE -> before;
            case SHELVE -> new Handling(OperatorState.SHELVED, who, deed.until(), deed.text(), before.takenBy());
            case UNSHELVE ->
                before.state() == OperatorState.SHELVED ? before.with(OperatorState.NONE, who, "") : before;
        };
    }

    /**
     * The same for an alarm that may be over by now.
     *
     * @throws InputRejected also where it is cleared, so that there is nothing left to deal with
     */
    public static Handling after(AlarmState before, Deed deed, String who, Instant now) {
        boolean always =
                switch (deed.kind()) {
                    case ACK, TAKE, SHELVE, CLOSE -> false;
                    case NOTE, RELEASE, UNSHELVE, REOPEN -> true;
                };
        that(always || before.active(), "state", "it is cleared: the fault is gone, so there is nothing left to do");
        return after(before.handling(), deed, who, now);
    }

    private static Handling released(Handling before, String who) {
        if (before.takenBy().isEmpty()) {
            return before;
        }
        return (before.state() == OperatorState.ACK ? before.with(OperatorState.NONE, who, "") : before).takenBy("");
    }

    private static OperatorState target(Deed deed) {
        return switch (deed.kind()) {
            case ACK, TAKE -> OperatorState.ACK;
            case CLOSE -> OperatorState.CLOSED;
            case SHELVE -> OperatorState.SHELVED;
            default -> OperatorState.NONE;
        };
    }

    private static void check(Handling before, Deed deed, Instant now) {
        String text = deed.text();
        switch (deed.kind()) {
            case ACK, TAKE, CLOSE ->
                that(before.state() != OperatorState.SHELVED, "state", "it is shelved: take it off the shelf first");
            case NOTE -> that(!text.isEmpty(), "text", "write what is to be noted");
            case SHELVE -> {
                that(!text.isEmpty(), "reason", "say why it is put aside");
                Optional<Instant> until = deed.until();
                that(until.isPresent() && until.get().isAfter(now), "until", "must lie in the future");
                that(!until.get().isAfter(now.plus(LONGEST_SHELF)), "until", "at most 90 days from now");
            }
            default -> {}
        }
        that(text.length() <= LONGEST_TEXT, "text", "at most " + LONGEST_TEXT + " characters");
    }

    private static void that(boolean holds, String field, String otherwise) {
        if (!holds) {
            throw new InputRejected(Map.of(field, otherwise));
        }
    }
}
