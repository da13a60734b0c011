package org.roundsman.snmp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;

/** Debian's snmpd as a child process on loopback, and its tools: an agent and a manager that nobody here wrote. */
public final class Snmpd implements AutoCloseable {

    public static final String HOST = "127.0.7.2";
    public static final String COMMUNITY = "lantern";

    private final Path folder;
    private final int port;
    private Process process;

    public Snmpd(Path folder) throws IOException {
        this.folder = folder;
        this.port = freePort();
        Files.writeString(folder.resolve("snmpd.conf"), """
                agentAddress udp:%s:%d
                rocommunity %s
                sysLocation Invented rack
                sysContact it@pebblegate.example
                sysName snmpd-under-test
                createUser walker SHA-256 "authentication" AES "confidential"
                rouser walker priv
                createUser elder SHA "authentication-1" AES "confidential-1"
                rouser elder priv
                createUser sha512 SHA-512 "authentication-5" AES-256 "confidential-5"
                rouser sha512 priv
                createUser signer SHA-384 "authentication-3"
                rouser signer auth
                createUser middle SHA-224 "authentication-2" AES-192 "confidential-2"
                rouser middle priv
                createUser open
                rouser open noauth
                """.formatted(HOST, port, COMMUNITY));
    }

    private static int freePort() throws IOException {
        try (DatagramSocket socket = new DatagramSocket(new InetSocketAddress(InetAddress.getByName(HOST), 0))) {
            return socket.getLocalPort();
        }
    }

    /** Starts it and waits until it answers its own side's snmpget. */
    public Snmpd start() throws IOException {
        ProcessBuilder builder = new ProcessBuilder(
                "snmpd",
                "-f",
                "-C",
                "-c",
                folder.resolve("snmpd.conf").toString(),
                "-Lf",
                folder.resolve("log").toString());
        process = environment(builder).start();
        Awaitility.await().atMost(20, TimeUnit.SECONDS).until(() -> run("snmpget", "-r0", "-t1", "1.3.6.1.2.1.1.3.0")
                .contains("1.3.6.1.2.1.1.3.0"));
        return this;
    }

    public void stop() {
        process.destroy();
        try {
            process.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** UDP port on {@link #HOST}. */
    public int port() {
        return port;
    }

    private ProcessBuilder environment(ProcessBuilder builder) {
        builder.environment().put("SNMP_PERSISTENT_DIR", folder.resolve("kept").toString());
        builder.environment().put("SNMPCONFPATH", folder.toString());
        builder.environment().put("MIBS", "");
        return builder.redirectErrorStream(true);
    }

    Agent agent(SnmpAccess access) {
        return new Agent(HOST, port, access);
    }

    Agent asV2() {
        return agent(new SnmpAccess.Community(2, COMMUNITY));
    }

    /** What snmpget prints of values, by name, numerically. */
    public Map<String, String> get(String... oids) {
        return values(run("snmpget", oids));
    }

    /** What snmpbulkwalk prints of a subtree. */
    Map<String, String> walk(String oid) {
        return values(run("snmpbulkwalk", oid));
    }

    /** What snmpbulkwalk -On prints of everything, letter by letter. */
    public String everything(String host, int at) {
        return run(List.of("snmpbulkwalk", "-v2c", "-c", COMMUNITY, "-On", "-m", "", host + ":" + at, ".1"));
    }

    public String everything() {
        return everything(HOST, port);
    }

    private static Map<String, String> values(String printed) {
        Map<String, String> values = new LinkedHashMap<>();
        // Long octet strings go on in the next line.
        printed.replaceAll("\n(?![.]|\\z)", " ")
                .lines()
                .map(line -> line.split(" ", 2))
                .filter(p -> p.length == 2)
                .forEach(pair -> values.put(pair[0].substring(1), pair[1].replaceAll("^\"|\"$", "")));
        return values;
    }

    private String run(String tool, String... arguments) {
        List<String> command = new ArrayList<>(List.of(tool, "-v2c", "-c", COMMUNITY, "-Onqet", HOST + ":" + port));
        Arrays.stream(arguments).filter(a -> a.startsWith("-")).forEach(a -> command.add(1, a));
        Arrays.stream(arguments).filter(a -> !a.startsWith("-")).forEach(command::add);
        return run(command);
    }

    private String run(List<String> command) {
        try {
            Process child = environment(new ProcessBuilder(command)).start();
            String printed = new String(child.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            child.waitFor(20, TimeUnit.SECONDS);
            return printed;
        } catch (IOException e) {
            throw new UncheckedIOException("is the Debian package snmp installed?", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        stop();
    }
}
