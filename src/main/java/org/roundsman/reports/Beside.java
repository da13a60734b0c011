package org.roundsman.reports;

import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/**
 * Work that goes on beside the caller's, on a thread of its own with the priority of the caller. Half of a large report waits for
 * the database, and the other half need not wait for that.
 */
final class Beside<T> {

    private final FutureTask<T> task;

    private Beside(FutureTask<T> task) {
        this.task = task;
    }

    static <T> Beside<T> start(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Thread thread = new Thread(task, Thread.currentThread().getName() + "-beside");
        thread.setDaemon(true);
        thread.start();
        return new Beside<>(task);
    }

    /** Waits for it. What it threw comes out here. An interrupt ends the waiting and the work, and stays set. */
    T result() {
        try {
            return task.get();
        } catch (InterruptedException e) {
            task.cancel(true);
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the work was interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
