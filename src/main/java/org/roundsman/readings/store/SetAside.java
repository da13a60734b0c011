package org.roundsman.readings.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.Base64;
import org.jboss.logging.Logger;
import org.roundsman.measure.Reading;
import org.roundsman.readings.spool.ReadingCodec;

/**
 * A file for readings that no table can hold: one line each with time, device, reason and the reading itself in Base64 of
 * the spool's form. It grows to 16 MiB and no further.
 */
final class SetAside {

    private static final Logger LOG = Logger.getLogger(SetAside.class);
    private static final long MOST = 16L << 20;

    private final Path file;
    private final Clock clock;

    SetAside(Path folder, Clock clock) {
        this.file = folder.resolve("set-aside.txt");
        this.clock = clock;
    }

    void put(Reading reading, Exception reason) {
        String why = String.valueOf(reason.getMessage()).lines().findFirst().orElse("");
        LOG.warnf(
                "A reading of device %d at %s cannot be stored and is put aside in %s: %s",
                reading.deviceId(), reading.at(), file, why);
        String line = clock.instant() + "\t" + reading.deviceId() + "\t" + reading.at() + "\t" + why.replace('\t', ' ')
                + "\t" + Base64.getEncoder().encodeToString(ReadingCodec.encode(reading)) + "\n";
        try {
            if (!Files.exists(file) || Files.size(file) + line.length() <= MOST) {
                Files.writeString(
                        file, line, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            }
        } catch (IOException e) {
            LOG.warnf("%s cannot be written: %s", file, e.getMessage());
        }
    }
}
