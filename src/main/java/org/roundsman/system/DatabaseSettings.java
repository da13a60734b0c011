package org.roundsman.system;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.util.Optional;

/** Which database: the embedded one, unless an external one is named. Read before the container starts. */
@ConfigMapping(prefix = "roundsman.database")
public interface DatabaseSettings {

    /** JDBC address of an external PostgreSQL 15 or later; none means the embedded one in the data folder. */
    Optional<String> url();

    /** Role to sign in as at the external database. */
    @WithDefault("roundsman")
    String user();

    /** Password of that role; {@link #passwordFile} is the better place. */
    Optional<String> password();

    /** File that holds the password, its last line end left out; wins over {@link #password}. */
    Optional<Path> passwordFile();

    /** TCP port of the embedded database on 127.0.0.1; 0 means a free one, remembered in the data folder. */
    @WithDefault("0")
    int embeddedPort();
}
