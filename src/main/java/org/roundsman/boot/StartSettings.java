package org.roundsman.boot;

import io.smallrye.config.ConfigValidationException;
import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.io.IOException;
import java.io.Reader;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import org.roundsman.system.DatabaseSettings;
import org.roundsman.system.SetupException;
import org.roundsman.system.SetupException.Fault;

/**
 * The few settings that are needed before the container runs. Order of precedence, as in the container: command line,
 * environment, file named by {@code --config}, defaults.
 */
record StartSettings(Path dataFolder, String host, int port, DatabaseSettings database) {

    private static final String DEFAULTS = "application.properties";
    private static final int ABOVE_DEFAULTS = 250;

    /** Hands the options on to the container as system properties, and reads what counts now. */
    static StartSettings from(Options options) {
        options.configuration().ifPresent(StartSettings::handOn);
        options.settings().forEach(System::setProperty);
        try {
            SmallRyeConfig config = config();
            return new StartSettings(
                    config.getValue("roundsman.data-folder", Path.class),
                    config.getValue("quarkus.http.host", String.class),
                    config.getValue("quarkus.http.port", Integer.class),
                    config.getConfigMapping(DatabaseSettings.class));
        } catch (ConfigValidationException | IllegalArgumentException e) {
            throw new SetupException(Fault.USAGE, "The configuration is not right: " + e.getMessage(), e);
        }
    }

    /** A setting that is given by the environment or as a system property keeps that value. */
    private static void handOn(Path file) {
        read(file).forEach((name, value) -> {
            String key = name.toString();
            String variable = key.replaceAll("[^A-Za-z0-9]", "_").toUpperCase(Locale.ROOT);
            if (System.getProperty(key) == null && System.getenv(variable) == null) {
                System.setProperty(key, value.toString());
            }
        });
    }

    private static Map<Object, Object> read(Path file) {
        Properties properties = new Properties();
        try (Reader reader = Files.newBufferedReader(file)) {
            properties.load(reader);
            return properties;
        } catch (IOException | IllegalArgumentException e) {
            throw new SetupException(Fault.USAGE, "The file named by --config cannot be read: " + e, e);
        }
    }

    private static SmallRyeConfig config() {
        try {
            URL defaults = Thread.currentThread().getContextClassLoader().getResource(DEFAULTS);
            return new SmallRyeConfigBuilder()
                    .addDefaultInterceptors()
                    .addSystemSources()
                    .withSources(new PropertiesConfigSource(defaults, ABOVE_DEFAULTS))
                    .withMapping(DatabaseSettings.class)
                    .build();
        } catch (IOException e) {
            throw new IllegalStateException("the program's own " + DEFAULTS + " cannot be read", e);
        }
    }
}
