package org.roundsman.demo;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * net-snmp's snmptrapd on loopback, which takes notifications by communities and users that it is told. Each one is a
 * line: version, source address, credential, then the fields of version 1, then the variables, with bars between.
 */
final class TrapDaemon implements AutoCloseable {

    private static final String OTHERS = " | %b | %P | %v\\n";

    private final Process process;
    private final List<String> lines = new CopyOnWriteArrayList<>();

    private TrapDaemon(Process process) {
        this.process = process;
        Thread reader = new Thread(this::read, "snmptrapd-output");
        reader.setDaemon(true);
        reader.start();
    }

    /** Starts it on a port of 127.0.0.1 for the credentials of all devices of a fleet. */
    static TrapDaemon start(int port, DemoFleet fleet) throws IOException {
        Path folder = Files.createTempDirectory(Files.createDirectories(Path.of("target")), "snmptrapd");
        List<String> settings = new ArrayList<>(List.of(
                "format1 one | %a | %N | %w | %q" + OTHERS,
                "format2 two" + OTHERS,
                "outputOption n",
                "doNotRetainNotificationLogs yes"));
        fleet.devices().forEach(device -> settings.addAll(access(device)));
        Path file = folder.resolve("snmptrapd.conf");
        Files.write(file, settings.stream().distinct().toList());
        ProcessBuilder builder = new ProcessBuilder(
                "snmptrapd", "-f", "-C", "-c", file.toString(), "-m", "", "-On", "-n", "-Lo", "127.0.0.1:" + port);
        builder.environment().put("SNMP_PERSISTENT_DIR", folder.toAbsolutePath().toString());
        builder.environment().put("SNMPCONFPATH", folder.toAbsolutePath().toString());
        return new TrapDaemon(builder.redirectErrorStream(true).start());
    }

    /** The engine of a trap is the sender's own (RFC 3414, 1.5.1): every agent has an entry. */
    private static List<String> access(DemoDevice device) {
        if (device.accepts() instanceof DemoCredential.Community community) {
            return List.of("authCommunity log " + community.community());
        }
        DemoCredential.User user = (DemoCredential.User) device.accepts();
        String engine = "0x80007ed903" + String.format("%012x", device.mac());
        return List.of(
                "createUser -e " + engine + " " + user.userName() + " SHA-256 " + user.authPassword() + " AES "
                        + user.privPassword(),
                "authUser log " + user.userName() + " priv");
    }

    private void read() {
        try (BufferedReader output = process.inputReader()) {
            output.lines().forEach(lines::add);
        } catch (UncheckedIOException | IOException e) {
            lines.add("no more output: " + e);
        }
    }

    /** All lines so far. */
    List<String> lines() {
        return List.copyOf(lines);
    }

    boolean listens() {
        return lines.stream().anyMatch(line -> line.startsWith("NET-SNMP version"));
    }

    @Override
    public void close() {
        process.destroy();
    }
}
