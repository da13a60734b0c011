package org.roundsman.testing;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Withdrawn firmware raises alarms, and changes of firmware are noticed. */
public class FirmwareAtWork implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("roundsman.firmware.enabled", "true");
    }
}
