package org.roundsman.readings.store;

import java.nio.file.Path;
import java.time.Duration;

/**
 * How the writer works.
 *
 * @param queueSize readings that wait in memory at most
 * @param batchSize readings a transaction at most
 * @param flush how long a reading waits for others to join its batch
 * @param spoolFolder where readings wait on disk; made when missing
 * @param spoolBytes most octets that they may take there
 * @param firstRetry pause after the first failure; doubled up to {@code lastRetry}
 * @param lastRetry longest pause between attempts
 */
public record WriterSettings(
        int queueSize,
        int batchSize,
        Duration flush,
        Path spoolFolder,
        long spoolBytes,
        Duration firstRetry,
        Duration lastRetry) {

    public static WriterSettings in(Path spoolFolder) {
        return new WriterSettings(
                20_000,
                2_000,
                Duration.ofMillis(500),
                spoolFolder,
                1L << 30,
                Duration.ofMillis(250),
                Duration.ofSeconds(10));
    }
}
