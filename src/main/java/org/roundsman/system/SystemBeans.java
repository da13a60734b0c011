package org.roundsman.system;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.Clock;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** What every feature may inject: the clock, the data folder, the sealer of secrets. */
final class SystemBeans {

    @Produces
    @Singleton
    Clock clock() {
        return Clock.systemUTC();
    }

    @Produces
    @Singleton
    DataFolder dataFolder(@ConfigProperty(name = "roundsman.data-folder") Path path) {
        return DataFolder.at(path);
    }

    @Produces
    @Singleton
    Sealer sealer(DataFolder folder) {
        return new Sealer(SecretKey.in(folder.keyFile()));
    }
}
