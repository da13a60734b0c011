package org.roundsman.boot;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.roundsman.system.SetupException;
import org.roundsman.system.SetupException.Fault;

/**
 * What the command line says.
 *
 * @param role which part this process takes
 * @param configuration file with settings, if one is named
 * @param settings settings by name that win over every other source
 * @param others what follows the role {@code agents}: it reads its own options
 */
record Options(Role role, Optional<Path> configuration, Map<String, String> settings, List<String> others) {

    static final String USAGE = """
        Usage: java -jar quarkus-run.jar [options]

          --role=central        the service (default)
          --role=demo           the service with an invented fleet
          --role=agents         the invented fleet's agents alone; --access-points, --seed, --port
                                and --notify=ADDRESS:PORT (where notifications go) are theirs
          --role=rotate-key     seals every secret under a new key, while the service is stopped, and ends
          --config=FILE         settings, see deploy/roundsman.sample.properties
          --data-folder=FOLDER  where the service keeps its files (default .roundsman)
          --host=ADDRESS        address to listen on (default 127.0.0.1)
          --port=NUMBER         port of the pages (default 8460)
          --access-points=N     size of the invented fleet, with --role=demo
          --seed=NUMBER         which invented fleet, with --role=demo
          --agents-port=NUMBER  UDP port of the invented agents, with --role=demo
          --help                this text
        """;

    private static final Map<String, String> SETTINGS = Map.of(
            "--data-folder", "roundsman.data-folder",
            "--host", "quarkus.http.host",
            "--port", "quarkus.http.port",
            "--access-points", "roundsman.demo.access-points",
            "--seed", "roundsman.demo.seed",
            "--agents-port", "roundsman.demo.port");

    /**
     * Reads {@code --name=value} and {@code --name value}.
     *
     * @throws SetupException when an option is unknown, misses its value, or the role does not exist
     */
    static Options parse(String... arguments) {
        Map<String, String> pairs = pairs(arguments);
        Role role = role(pairs.remove("--role"));
        if (role == Role.AGENTS) {
            List<String> others = new ArrayList<>();
            pairs.forEach((name, value) -> others.addAll(List.of(name, value)));
            return new Options(role, Optional.empty(), Map.of(), List.copyOf(others));
        }
        Optional<Path> configuration =
                Optional.ofNullable(pairs.remove("--config")).map(Path::of);
        Map<String, String> settings = new TreeMap<>();
        pairs.forEach((name, value) -> settings.put(setting(name), value));
        if (role == Role.DEMO) {
            settings.put("roundsman.demo.enabled", "true");
            // Everything of the demonstration is on this machine, receivers of webhooks included.
            settings.put("roundsman.notices.webhook-local-allowed", "true");
        }
        return new Options(role, configuration, Map.copyOf(settings), List.of());
    }

    private static Map<String, String> pairs(String... arguments) {
        Map<String, String> pairs = new TreeMap<>();
        for (int i = 0; i < arguments.length; i++) {
            String[] halves = arguments[i].split("=", 2);
            if (!halves[0].startsWith("--")) {
                throw usage("Unexpected argument \"" + arguments[i] + "\".");
            }
            if (halves.length == 1 && ++i == arguments.length) {
                throw usage("Option " + halves[0] + " misses its value.");
            }
            pairs.put(halves[0], halves.length == 2 ? halves[1] : arguments[i]);
        }
        return pairs;
    }

    private static Role role(String name) {
        try {
            return name == null
                    ? Role.CENTRAL
                    : Role.valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
        } catch (IllegalArgumentException e) {
            throw usage("There is no role \"" + name + "\".");
        }
    }

    private static String setting(String option) {
        String name = SETTINGS.get(option);
        if (name == null) {
            throw usage("There is no option \"" + option + "\".");
        }
        return name;
    }

    private static SetupException usage(String problem) {
        return new SetupException(Fault.USAGE, problem + "\n\n" + USAGE);
    }
}
