package org.roundsman.readings.store;

import java.util.List;
import org.roundsman.measure.Reading;

/** Hears what the writer does: for our own metrics, and for those downstream. Called from the writer's thread and from those of the rounds. */
public interface WriterListener {

    /** Hears nothing. */
    WriterListener NONE = new WriterListener() {};

    /** A batch was committed. */
    default void stored(BatchStore.Stored batch, long nanoseconds) {}

    /**
     * These readings are in the database now; some of them may have been there before, or be of devices that are gone.
     * Called on the writer's thread, which waits meanwhile: must not throw, and must not take long.
     */
    default void committed(List<Reading> readings) {}

    /** The database did not take a batch; it is tried again. */
    default void failed() {}

    /** Readings were put on disk. */
    default void spilled(int readings) {}

    /** Readings could not be kept anywhere. */
    default void lost(int readings) {}

    /** A reading that no table can hold was put aside. */
    default void putAside() {}
}
