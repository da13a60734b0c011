package org.roundsman.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The house rules of docs/architecture.md and DEVELOPERS.md, held against everything under src. */
class ArchitectureTest {

    private static JavaClasses main;
    private static PackageRules rules;

    @BeforeAll
    static void read() throws IOException {
        main = new ClassFileImporter().importPath(Path.of("target/classes"));
        rules = new PackageRules("org.roundsman", PackageTable.in(Path.of("docs/architecture.md")));
    }

    @Test
    void theTableNamesEveryPackageAndNoOther() {
        assertThat(rules.tableIsComplete(main)).isEmpty();
    }

    @Test
    void packagesImportOnlyWhatTheTableAllowsAndOnlyRoots() {
        assertThat(rules.importsFollowTheTable(main)).isEmpty();
    }

    @Test
    void foreignLibrariesStayWhereTheyBelong() {
        assertThat(rules.foreignLibrariesStayOut(main)).isEmpty();
    }

    @Test
    void mainCodeNeitherSleepsNorTalksNorReadsTheWallClock() {
        assertThat(CallRules.violations(main, ArchitectureTest::isToolOrClock)).isEmpty();
    }

    /** Command-line entries print; the one producer of the clock makes it. */
    private static boolean isToolOrClock(JavaClass type) {
        return type.getSimpleName().endsWith("Main")
                || type.getPackageName().equals("org.roundsman.boot.bench")
                || type.getName().equals("org.roundsman.system.SystemBeans");
    }

    @Test
    void sourcesKeepTheirSizesAndNames() throws IOException {
        List<String> violations = new ArrayList<>(sources(Path.of("src/main/java"), 400));
        violations.addAll(sources(Path.of("src/test/java"), 500));
        assertThat(violations).isEmpty();
    }

    private static List<String> sources(Path folder, int longestFile) throws IOException {
        Map<String, String> sources = new TreeMap<>();
        try (var files = Files.walk(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                sources.put(file.toString(), Files.readString(file));
            }
        }
        return SourceRules.violations(sources, longestFile);
    }

    @Test
    void templatesAreShort() throws IOException {
        Path folder = Path.of("src/main/resources/templates");
        if (Files.notExists(folder)) {
            return;
        }
        try (var files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertThat(Files.readAllLines(file)).as(file.toString()).hasSizeLessThanOrEqualTo(150);
            }
        }
    }

    @Test
    void everyPackageSaysWhatItIsFor() throws IOException {
        for (String name :
                PackageTable.in(Path.of("docs/architecture.md")).mayImport().keySet()) {
            Path info = Path.of("src/main/java/org/roundsman", name, "package-info.java");
            assertThat(info).content().contains("/**").containsIgnoringCase("owns");
        }
    }
}
