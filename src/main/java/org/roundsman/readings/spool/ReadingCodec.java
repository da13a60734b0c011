package org.roundsman.readings.spool;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;

/**
 * A reading as octets, first octet the version of the form. Metrics and facts are written by name, so that a spool
 * outlives a change of their order; of a name that is no longer known the figure is left out.
 */
public final class ReadingCodec {

    private static final int VERSION = 1;

    private ReadingCodec() {}

    public static byte[] encode(Reading reading) {
        ByteArrayOutputStream octets = new ByteArrayOutputStream(256);
        try (DataOutputStream out = new DataOutputStream(octets)) {
            out.writeByte(VERSION);
            out.writeLong(reading.deviceId());
            out.writeLong(reading.at().toEpochMilli());
            out.writeShort(reading.outcome().code());
            out.writeInt(reading.nextInSeconds());
            write(out, reading.device(), Subject.DEVICE);
            out.writeShort(reading.radios().size());
            for (RadioReading radio : reading.radios()) {
                out.writeInt(radio.number());
                write(out, radio.values(), Subject.RADIO);
            }
            out.writeShort(reading.networks().size());
            for (NetworkReading network : reading.networks()) {
                write(out, network.ssid());
                write(out, network.values(), Subject.NETWORK);
            }
            out.writeBoolean(reading.facts().isPresent());
            if (reading.facts().isPresent()) {
                write(out, reading.facts().get());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory", e);
        }
        return octets.toByteArray();
    }

    /**
     * Reads what {@link #encode} wrote.
     *
     * @throws IOException when the octets are no reading of a version known here
     */
    public static Reading decode(byte[] octets) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(octets))) {
            int version = in.readUnsignedByte();
            if (version != VERSION) {
                throw new IOException("a reading in form " + version + ", known is " + VERSION);
            }
            return new Reading(
                    in.readLong(),
                    Instant.ofEpochMilli(in.readLong()),
                    Outcome.ofCode(in.readShort()),
                    in.readInt(),
                    values(in, Subject.DEVICE),
                    radios(in),
                    networks(in),
                    in.readBoolean() ? Optional.of(facts(in)) : Optional.empty());
        } catch (IllegalArgumentException e) {
            throw new IOException("not a reading: " + e.getMessage(), e);
        }
    }

    private static void write(DataOutputStream out, Values values, Subject subject) throws IOException {
        List<Metric> measured = Metric.of(subject).stream().filter(values::has).toList();
        out.writeByte(measured.size());
        for (Metric metric : measured) {
            out.writeUTF(metric.column());
            out.writeDouble(values.raw(metric));
        }
    }

    private static Values values(DataInputStream in, Subject subject) throws IOException {
        Values.Builder values = Values.builder(subject);
        int count = in.readUnsignedByte();
        for (int i = 0; i < count; i++) {
            String column = in.readUTF();
            double figure = in.readDouble();
            Metric.of(subject).stream()
                    .filter(metric -> metric.column().equals(column))
                    .forEach(metric -> values.set(metric, figure));
        }
        return values.build();
    }

    private static List<RadioReading> radios(DataInputStream in) throws IOException {
        List<RadioReading> radios = new ArrayList<>();
        int count = in.readUnsignedShort();
        for (int i = 0; i < count; i++) {
            radios.add(new RadioReading(in.readInt(), values(in, Subject.RADIO)));
        }
        return radios;
    }

    private static List<NetworkReading> networks(DataInputStream in) throws IOException {
        List<NetworkReading> networks = new ArrayList<>();
        int count = in.readUnsignedShort();
        for (int i = 0; i < count; i++) {
            networks.add(new NetworkReading(text(in), values(in, Subject.NETWORK)));
        }
        return networks;
    }

    private static void write(DataOutputStream out, Facts facts) throws IOException {
        out.writeShort(facts.values().size());
        for (Map.Entry<Fact, String> fact : facts.values().entrySet()) {
            out.writeUTF(fact.getKey().name());
            write(out, fact.getValue());
        }
        out.writeShort(facts.radios().size());
        for (Facts.RadioFacts radio : facts.radios()) {
            out.writeInt(radio.number());
            write(out, radio.label());
            write(out, radio.mac());
        }
        out.writeShort(facts.networks().size());
        for (String ssid : facts.networks()) {
            write(out, ssid);
        }
    }

    private static Facts facts(DataInputStream in) throws IOException {
        Map<Fact, String> values = new EnumMap<>(Fact.class);
        int count = in.readUnsignedShort();
        for (int i = 0; i < count; i++) {
            String name = in.readUTF();
            String value = text(in);
            for (Fact fact : Fact.values()) {
                if (fact.name().equals(name)) {
                    values.put(fact, value);
                }
            }
        }
        List<Facts.RadioFacts> radios = new ArrayList<>();
        int radioCount = in.readUnsignedShort();
        for (int i = 0; i < radioCount; i++) {
            radios.add(new Facts.RadioFacts(in.readInt(), text(in), text(in)));
        }
        List<String> networks = new ArrayList<>();
        int networkCount = in.readUnsignedShort();
        for (int i = 0; i < networkCount; i++) {
            networks.add(text(in));
        }
        return new Facts(values, radios, networks);
    }

    private static void write(DataOutputStream out, String text) throws IOException {
        byte[] octets = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(octets.length);
        out.write(octets);
    }

    private static String text(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > in.available()) {
            throw new IOException("a text of " + length + " octets where " + in.available() + " are left");
        }
        return new String(in.readNBytes(length), StandardCharsets.UTF_8);
    }
}
