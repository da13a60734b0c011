package org.roundsman.snmp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** snmptrap and snmpinform of Debian's package snmp as senders: an implementation of SNMP that nobody here wrote. */
public final class SentByNetSnmp {

    /** Exit status 0 of an inform means that its answer came and was right. */
    public record Said(int exit, String output) {}

    private SentByNetSnmp() {}

    /** Runs a tool from that address of loopback. */
    public static Said run(String tool, String from, int port, List<String> access, String... arguments) {
        List<String> command = new ArrayList<>(List.of(tool, "-m", "", "-r", "1", "-t", "3"));
        command.addAll(access);
        command.add("--clientaddr=" + from);
        command.add("127.0.0.1:" + port);
        command.addAll(List.of(arguments));
        try {
            Path own = Files.createDirectories(Path.of("target", "net-snmp-traps"));
            ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
            builder.environment().put("SNMPCONFPATH", own.toString());
            builder.environment().put("SNMP_PERSISTENT_DIR", own.toString());
            Process process = builder.start();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return new Said(process.waitFor(), output);
        } catch (IOException e) {
            throw new UncheckedIOException("is the Debian package snmp installed?", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
