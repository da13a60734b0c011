package org.roundsman.reports;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reports as JSON: what is stored when a report is sent. The same report gives the same octets, and reading them gives an equal
 * report. The settings are its own, so that no change to the answers of the API reaches what is stored. Thread-safe.
 */
@Singleton
public class ReportJson {

    private final ObjectMapper mapper = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final ObjectWriter writer =
            mapper.writer(new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n")));

    /** What the observation gives, and late readings can change. */
    private record Observed(
            Watch whole,
            Watch service,
            Crowd crowd,
            List<SiteFigures> sites,
            List<Outage> outages,
            List<RadioFigures> radios,
            List<Room> rooms) {}

    /** UTF-8, a field a line, lines end in LF. */
    public byte[] write(Report report) {
        return octets(report);
    }

    /**
     * @throws IllegalArgumentException when the octets are no report of this form
     */
    public Report read(byte[] json) {
        try {
            return mapper.readValue(json, Report.class);
        } catch (IOException e) {
            throw new IllegalArgumentException("no report: " + e.getMessage(), e);
        }
    }

    /** SHA-256 (FIPS 180-4) in 64 lower-case hexadecimal digits. */
    public String sha256(byte[] octets) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(octets));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * A print of the figures that come from observation: it changes when late readings changed one of them, and not with the time
     * of the report, nor with what is told as it stands, such as firmware, warranty or the band of a radio.
     */
    public String observed(Report report) {
        return sha256(octets(new Observed(
                report.whole(),
                report.service(),
                report.crowd(),
                report.sites(),
                report.outages(),
                report.radios().stream().map(ReportJson::withoutBand).toList(),
                report.rooms())));
    }

    private static RadioFigures withoutBand(RadioFigures radio) {
        return new RadioFigures(
                radio.siteId(),
                radio.site(),
                radio.deviceId(),
                radio.device(),
                radio.place(),
                radio.number(),
                OptionalDouble.empty(),
                radio.utilisation(),
                radio.mean(),
                radio.busy(),
                radio.quarters(),
                radio.expected(),
                radio.clients());
    }

    private byte[] octets(Object value) {
        try {
            return writer.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a report cannot be written as JSON: " + e.getMessage(), e);
        }
    }
}
