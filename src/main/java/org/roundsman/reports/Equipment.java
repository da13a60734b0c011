package org.roundsman.reports;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Firmware and warranty as they stand at the moment of the report.
 *
 * @param devices how many devices there are
 * @param firmware how many stand how, by name of {@code FirmwareStatus}; only those above zero
 * @param versions what runs, by model and version
 * @param warranty how many stand how, by name of {@code CoverStatus}; only those above zero
 * @param ending what ends within six months after the stretch, the first end first
 * @param pastSupport devices whose maker gives no help any more
 * @param endingCost what replacing those that end costs at list price, by ISO 4217 code
 * @param unpriced how many of those that end have no list price
 */
public record Equipment(
        int devices,
        SortedMap<String, Integer> firmware,
        List<Runs> versions,
        SortedMap<String, Integer> warranty,
        List<Ending> ending,
        int pastSupport,
        SortedMap<String, BigDecimal> endingCost,
        int unpriced) {

    public Equipment {
        versions = List.copyOf(versions);
        ending = List.copyOf(ending);
    }

    Equipment withoutCosts() {
        return new Equipment(devices, firmware, versions, warranty, ending, pastSupport, new TreeMap<>(), 0);
    }

    /** How many devices of a model run a version. @param statuses by name of {@code FirmwareStatus} */
    public record Runs(String model, String version, int devices, Map<String, Integer> statuses) {}

    /** Cover that ends. @param lastDay the last day that is covered */
    public record Ending(String site, String device, String model, String serial, LocalDate lastDay) {}
}
