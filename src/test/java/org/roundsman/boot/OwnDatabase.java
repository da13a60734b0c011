package org.roundsman.boot;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.List;
import java.util.Map;
import org.roundsman.testing.TestDatabase;

/** A container with a database of its own, since who looks for what sites have in common would see those of other tests. */
public final class OwnDatabase implements QuarkusTestProfile {

    /** Silence is certain within an interval of {@link InventedRounds}. */
    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("roundsman.polling.timeout", "400ms", "roundsman.data-folder", "target/outages-data");
    }

    @Override
    public List<TestResourceEntry> testResources() {
        return List.of(new TestResourceEntry(Fresh.class));
    }

    @Override
    public boolean disableGlobalTestResources() {
        return true;
    }

    /** Makes the database. */
    public static final class Fresh implements QuarkusTestResourceLifecycleManager {

        private static final String NAME = "outages";

        @Override
        public Map<String, String> start() {
            TestDatabase.fresh(NAME);
            return Map.of(
                    "quarkus.datasource.jdbc.url", TestDatabase.url(NAME),
                    "quarkus.datasource.username", "postgres",
                    "quarkus.datasource.password", "postgres");
        }

        @Override
        public void stop() {
            // the database goes with the JVM
        }
    }
}
