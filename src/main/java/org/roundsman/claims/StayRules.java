package org.roundsman.claims;

import java.time.Instant;
import java.util.Optional;

/**
 * What the serial number that a device says means for which unit stands there. Pure. Asked again with the same, it answers
 * that nothing is to be done, and what is older than what is known changes nothing: so words may come twice, late or out of
 * order.
 */
public final class StayRules {

    private StayRules() {}

    /** What is to be done. */
    public sealed interface Step {

        /** Nothing. */
        record Nothing() implements Step {}

        /** A unit stands there, and none was known to. */
        record Begin(String serial, Instant at) implements Step {}

        /** Another unit stands there than before. */
        record Follow(String serial, Instant at) implements Step {}

        /** The device says what was announced. */
        record Confirm() implements Step {}

        /** The device says another serial number than the announced one. */
        record Contradict(String serial, Instant since) implements Step {}
    }

    /**
     * What a device says.
     *
     * @param since when it was first read
     * @param readAt when the device was last asked and answered; empty for what it said in the past
     */
    public record Said(String serial, Instant since, Optional<Instant> readAt) {

        /** What it says today. */
        public static Said today(String serial, Instant since, Instant readAt) {
            return new Said(serial.strip(), since, Optional.of(readAt));
        }

        /** What it said from then on, for a while at least. */
        public static Said once(String serial, Instant since) {
            return new Said(serial.strip(), since, Optional.empty());
        }
    }

    /**
     * Decides.
     *
     * @param now the stay that goes on, if there is one
     * @param ended when the last one before ended, if there was one
     */
    public static Step of(Optional<Stay> now, Optional<Instant> ended, Said said) {
        if (said.serial().isEmpty()) {
            return new Step.Nothing();
        }
        if (now.isEmpty()) {
            return begin(ended, said);
        }
        Stay stay = now.get();
        if (stay.awaited()) {
            return awaited(stay, said);
        }
        if (stay.isOf(said.serial()) || !said.since().isAfter(stay.from())) {
            return new Step.Nothing();
        }
        return new Step.Follow(said.serial(), said.since());
    }

    private static Step begin(Optional<Instant> ended, Said said) {
        Instant earliest = ended.orElse(Instant.MIN);
        if (!said.since().isBefore(earliest)) {
            return new Step.Begin(said.serial(), said.since());
        }
        return said.readAt().isPresent() ? new Step.Begin(said.serial(), earliest) : new Step.Nothing();
    }

    /** What was said before the announcement says nothing about it. */
    private static Step awaited(Stay stay, Said said) {
        if (said.readAt().isEmpty()) {
            return new Step.Nothing();
        }
        if (stay.isOf(said.serial())) {
            return new Step.Confirm();
        }
        boolean asked = said.readAt().get().isAfter(stay.announcedAt().orElse(stay.from()));
        boolean known = stay.instead().equals(said.serial());
        return asked && !known ? new Step.Contradict(said.serial(), said.since()) : new Step.Nothing();
    }
}
