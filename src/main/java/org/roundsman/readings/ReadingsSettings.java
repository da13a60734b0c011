package org.roundsman.readings;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.nio.file.Path;
import java.time.Duration;
import org.roundsman.readings.store.WriterSettings;

/** How readings are stored and for how long they are kept. */
@ConfigMapping(prefix = "roundsman.readings")
public interface ReadingsSettings {

    /** Readings that wait in memory at most. */
    @WithDefault("20000")
    @Min(100)
    int queueSize();

    /** Readings a transaction at most. */
    @WithDefault("2000")
    @Min(1)
    @Max(20_000)
    int batchSize();

    /** How long a reading waits for others to join its batch. */
    @WithDefault("500ms")
    Duration flush();

    /** Folder in which readings wait while the database takes nothing. */
    @WithDefault("${roundsman.data-folder}/spool")
    Path spoolFolder();

    /** Most octets that waiting readings may take there. */
    @WithDefault("1073741824")
    @Min(1_048_576)
    long spoolBytes();

    /** Whole UTC days of raw readings to keep besides today. */
    @WithDefault("8")
    @Min(1)
    int rawDays();

    /** Whole UTC months of quarter hours to keep besides this one. */
    @WithDefault("14")
    @Min(1)
    int quarterMonths();

    /** How often quarter hours and days are built. */
    @WithDefault("60s")
    Duration rollUpEvery();

    /** How long a day that goes on is left alone before it is built again. */
    @WithDefault("15m")
    Duration currentDayEvery();

    /** What the writer needs of it. */
    default WriterSettings writing() {
        return new WriterSettings(
                queueSize(),
                batchSize(),
                flush(),
                spoolFolder().toAbsolutePath().normalize(),
                spoolBytes(),
                Duration.ofMillis(250),
                Duration.ofSeconds(10));
    }
}
