package org.roundsman.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** The command-line tools of Debian's package snmp: an implementation of SNMP that nobody here wrote. */
public final class NetSnmp {

    /**
     * What a tool printed.
     *
     * @param output both streams
     */
    public record Said(int exit, String output) {

        /** Value with its type by dotted name, in the order printed; strings that span lines are not expected. */
        public Map<String, String> values() {
            Map<String, String> values = new LinkedHashMap<>();
            // at the end of the tree a walk prints the last name once more, with words instead of a value
            Predicate<String> valued = line -> line.contains(" = ") && !line.contains("No more variables left");
            output.lines().filter(valued).forEach(line -> {
                String[] parts = line.split(" = ", 2);
                values.put(parts[0].substring(1), parts[1].strip());
            });
            return values;
        }

        /** The value of one name without its type, and without quotes. */
        public String value(String name) {
            String typed = values().get(name);
            if (typed == null) {
                throw new AssertionError(name + " is not in:\n" + output);
            }
            return typed.replaceFirst("^[A-Za-z0-9-]+: ", "").replace("\"", "");
        }

        public long number(String name) {
            return Long.parseLong(value(name));
        }
    }

    private NetSnmp() {}

    /** Runs a tool against a device with the credential that its agent takes. */
    public static Said ask(String tool, DemoDevice device, String... names) {
        return ask(tool, device, device.accepts(), names);
    }

    public static Said ask(String tool, DemoDevice device, DemoCredential credential, String... names) {
        return run(tool, device, access(credential), names);
    }

    private static List<String> access(DemoCredential credential) {
        List<String> access = new ArrayList<>();
        if (credential instanceof DemoCredential.Community community) {
            access.addAll(List.of("-v", community.version() == 1 ? "1" : "2c", "-c", community.community()));
        } else if (credential instanceof DemoCredential.User user) {
            access.addAll(List.of("-v", "3", "-l", "authPriv", "-u", user.userName()));
            access.addAll(List.of("-a", "SHA-256", "-A", user.authPassword(), "-x", "AES", "-X", user.privPassword()));
        }
        return access;
    }

    /** One try of a second, for where silence is looked for: whether the device answers the credential that it takes. */
    public static boolean answers(DemoDevice device, String name) {
        return !run("snmpget", device, with(device.accepts(), "-r", "0", "-t", "1"), name)
                .output()
                .contains("Timeout");
    }

    private static List<String> with(DemoCredential credential, String... options) {
        List<String> access = new ArrayList<>(access(credential));
        access.addAll(List.of(options));
        return access;
    }

    /**
     * A table as snmptable reads it by the names and types of its MIB: the row of each index, cells by column name.
     *
     * @param name with its module, such as {@code LLDP-MIB::lldpRemTable}
     */
    public static Map<String, Map<String, String>> table(DemoDevice device, String name) {
        List<String> command = new ArrayList<>(
                List.of("snmptable", "-M", "src/test/resources/mibs", "-m", "ALL", "-r", "1", "-t", "2"));
        command.addAll(List.of("-Ob", "-Ci", "-Cf", ";"));
        command.addAll(access(device.accepts()));
        command.addAll(List.of(device.host() + ":" + device.port(), name));
        List<String> lines = execute(command).output().lines().toList();
        List<String> head = List.of(lines.stream()
                .filter(line -> line.startsWith("index;"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is no table in:\n" + lines))
                .split(";", -1));
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        for (String line : lines.subList(lines.indexOf(String.join(";", head)) + 1, lines.size())) {
            String[] cells = line.split(";", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 1; i < cells.length; i++) {
                row.put(head.get(i), cells[i].replace("\"", ""));
            }
            rows.put(cells[0], row);
        }
        return rows;
    }

    /** Runs a tool with those access options. */
    public static Said run(String tool, DemoDevice device, List<String> access, String... names) {
        List<String> command = new ArrayList<>(List.of(tool, "-m", "", "-Onet", "-r", "1", "-t", "2"));
        command.addAll(access);
        command.add(device.host() + ":" + device.port());
        command.addAll(List.of(names));
        return execute(command);
    }

    private static Said execute(List<String> command) {
        try {
            Path own = Files.createDirectories(Path.of("target", "net-snmp"));
            ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
            builder.environment().put("SNMPCONFPATH", own.toString());
            builder.environment().put("SNMP_PERSISTENT_DIR", own.toString());
            Process process = builder.start();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return new Said(process.waitFor(), output);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
