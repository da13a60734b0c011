package org.roundsman.boot;

import java.time.Instant;
import java.util.Map;
import org.roundsman.demo.DemoFleet;

/**
 * The invented fleet is in the database, and nothing is polled yet; sent by CDI at every start of the demonstration, on the
 * thread that sows. Who adds invented things of another sort observes it, and leaves what is there already.
 *
 * @param ids the stored id of each device, by its number in the fleet; without those that people have removed
 * @param first when the fleet was sown for the first time: the invented past ends there
 */
record DemoSown(DemoFleet fleet, Map<Integer, Long> ids, Instant first) {}
