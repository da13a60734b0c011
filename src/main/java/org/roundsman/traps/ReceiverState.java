package org.roundsman.traps;

import java.time.Instant;

/** Whether notifications can come in. */
public sealed interface ReceiverState {

    /** Switched off by the settings, or not started yet. */
    record Off() implements ReceiverState {}

    /**
     * They can.
     *
     * @param address and port
     */
    record Listening(String address, int port, Instant since) implements ReceiverState {}

    /**
     * The port cannot be had; it is tried again every ten seconds.
     *
     * @param why what a person reads, with what to do
     */
    record Blocked(String why, Instant since) implements ReceiverState {}
}
