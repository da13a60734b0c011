package org.roundsman.testing;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.util.Map;

/** Gives every container test the database of {@link TestDatabase}. */
@QuarkusTestResource(WithDatabase.class)
public final class WithDatabase implements QuarkusTestResourceLifecycleManager {

    @Override
    public Map<String, String> start() {
        return Map.of(
                "quarkus.datasource.jdbc.url", TestDatabase.url(),
                "quarkus.datasource.username", "postgres",
                "quarkus.datasource.password", "postgres");
    }

    @Override
    public void stop() {
        // the database goes with the JVM
    }
}
