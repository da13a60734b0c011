package org.roundsman.readings.store;

/** Hears what the writer does: for our own metrics. Called from the writer's thread and from those of the rounds. */
public interface WriterListener {

    /** Hears nothing. */
    WriterListener NONE = new WriterListener() {};

    /** A batch was committed. */
    default void stored(BatchStore.Stored batch, long nanoseconds) {}

    /** The database did not take a batch; it is tried again. */
    default void failed() {}

    /** Readings were put on disk. */
    default void spilled(int readings) {}

    /** Readings could not be kept anywhere. */
    default void lost(int readings) {}

    /** A reading that no table can hold was put aside. */
    default void putAside() {}
}
