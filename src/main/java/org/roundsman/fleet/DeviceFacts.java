package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads what devices said about themselves. Callers check the customer scope through {@link Devices#find} first. */
@ApplicationScoped
public class DeviceFacts {

    private final EntityManager entities;

    DeviceFacts(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Something a device said.
     *
     * @param fact its name, such as SERIAL
     * @param since when this value was first read
     */
    public record Said(String fact, String value, Instant since) {}

    /** A radio as its device names it; label and mac may be empty. */
    public record NamedRadio(int number, String label, String mac) {}

    /** All that the device said, by name of the fact. */
    @Transactional
    public List<Said> of(long deviceId) {
        return entities.createNativeQuery(
                        "select fact, value, since from device_fact where device_id = ?1 order by fact", Said.class)
                .setParameter(1, deviceId)
                .getResultList();
    }

    /** What every device says of one fact, by device; those that do not say it are left out. */
    @Transactional
    public Map<Long, String> everywhere(String fact) {
        Map<Long, String> values = new HashMap<>();
        entities.createNativeQuery("select device_id, value from device_fact where fact = ?1", Object[].class)
                .setParameter(1, fact)
                .getResultList()
                .forEach(row -> values.put(((Number) ((Object[]) row)[0]).longValue(), (String) ((Object[]) row)[1]));
        return values;
    }

    /** The device's radios by number. */
    @Transactional
    public List<NamedRadio> radios(long deviceId) {
        return entities.createNativeQuery(
                        "select number, label, mac from radio where device_id = ?1 order by number", NamedRadio.class)
                .setParameter(1, deviceId)
                .getResultList();
    }
}
