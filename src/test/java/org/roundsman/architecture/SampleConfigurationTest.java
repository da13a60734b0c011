package org.roundsman.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.properties.HasAnnotations;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.ConfigMappings.ConfigClass;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

/** deploy/roundsman.sample.properties has every roundsman.* key that the code reads, with its default, and no other. */
class SampleConfigurationTest {

    private static final Path SAMPLE = Path.of("deploy/roundsman.sample.properties");
    private static final Pattern ENTRY = Pattern.compile("^#?((?:roundsman|quarkus)\\.[a-z0-9.-]+)=(.*)$");
    private static final String NO_DEFAULT = "";

    @Test
    void everyKeyStandsInTheSampleAndNoOther() throws IOException {
        assertThat(sample().keySet()).containsExactlyElementsOf(read().keySet());
    }

    @Test
    void theSampleShowsTheDefaults() throws IOException {
        Map<String, String> sample = sample();
        read().forEach((key, byDefault) -> {
            if (!byDefault.equals(NO_DEFAULT)) {
                assertThat(sample).containsEntry(key, byDefault);
            }
        });
    }

    @Test
    void eachBlockOfKeysBeginsWithAnExplanation() throws IOException {
        List<String> lines = Files.readAllLines(SAMPLE);
        for (int i = 1; i < lines.size(); i++) {
            if (ENTRY.matcher(lines.get(i)).matches()) {
                assertThat(lines.get(i - 1)).as("line before " + lines.get(i)).startsWith("#");
            }
        }
    }

    private static Map<String, String> sample() throws IOException {
        Map<String, String> entries = new TreeMap<>();
        for (String line : Files.readAllLines(SAMPLE)) {
            Matcher entry = ENTRY.matcher(line);
            if (entry.matches() && entry.group(1).startsWith("roundsman.")) {
                entries.put(entry.group(1), entry.group(2));
            }
        }
        return entries;
    }

    /** The keys of the code with their defaults. */
    private static Map<String, String> read() throws IOException {
        JavaClasses main = new ClassFileImporter().importPath(Path.of("target/classes"));
        Map<String, String> keys = new TreeMap<>();
        for (JavaClass type : main) {
            if (type.isAnnotatedWith(ConfigMapping.class) && !type.getName().contains("$$")) {
                ConfigClass.configClass(type.reflect())
                        .getProperties()
                        .forEach((key, value) -> keys.put(key, value == null ? NO_DEFAULT : value));
            }
            keys.keySet().removeIf(key -> key.endsWith("[*]")); // the other way to write a list
            injected(type).forEach(key -> keys.putIfAbsent(key, NO_DEFAULT));
        }
        return keys;
    }

    private static Stream<String> injected(JavaClass type) {
        Stream<HasAnnotations<?>> places = Stream.concat(
                type.getFields().stream(), type.getCodeUnits().stream().flatMap(unit -> unit.getParameters().stream()));
        return places.flatMap(place -> place.tryGetAnnotationOfType(ConfigProperty.class).stream())
                .map(ConfigProperty::name)
                .filter(name -> name.startsWith("roundsman."));
    }
}
