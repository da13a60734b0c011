package org.roundsman.testing;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Reports are built and sent by themselves; other tests have them built step by step. */
public class ReportsAtWork implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("roundsman.reports.enabled", "true");
    }
}
