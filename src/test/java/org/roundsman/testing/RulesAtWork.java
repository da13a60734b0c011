package org.roundsman.testing;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Readings are judged by the rules as they come; other tests raise their alarms by hand. */
public class RulesAtWork implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("roundsman.rules.enabled", "true");
    }
}
