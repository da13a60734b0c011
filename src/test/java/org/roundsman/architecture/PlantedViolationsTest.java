package org.roundsman.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Each rule finds what was planted for it: a rule that cannot fail is none. */
class PlantedViolationsTest {

    private final JavaClasses planted = new ClassFileImporter().importPackages("planted");
    private final PackageRules rules = new PackageRules(
            "planted",
            new PackageTable(Map.of(
                    "shared", Set.of(),
                    "fleet", Set.of("shared"),
                    "polling", Set.of("shared", "fleet"),
                    "web", Set.of("shared"),
                    "readings", Set.of())));

    @Test
    void missingAndSuperfluousPackagesAreFound() {
        assertThat(rules.tableIsComplete(planted))
                .containsExactlyInAnyOrder(
                        "package stray is missing from the table", "the table names readings, which does not exist");
    }

    @Test
    void importsAgainstTheTableAndIntoSubPackagesAreFound() {
        List<String> violations = rules.importsFollowTheTable(planted);
        assertThat(violations)
                .anyMatch(text -> text.startsWith("fleet may not import polling: ") && text.contains("Upstream"))
                .anyMatch(text -> text.startsWith("sub-packages of fleet are its own: ") && text.contains("Rounds"))
                .noneMatch(text -> text.contains("may not import shared"));
    }

    @Test
    void foreignLibrariesAreFound() {
        assertThat(rules.foreignLibrariesStayOut(planted))
                .anyMatch(
                        text -> text.startsWith("jakarta.enterprise.inject.Instance") && text.contains("WithContainer"))
                .anyMatch(text -> text.startsWith("java.sql.Connection") && text.contains("WithSql"))
                .anyMatch(text -> text.startsWith("jakarta.persistence.") && text.contains("WithEntities"));
    }

    @Test
    void forbiddenCallsAreFoundUnlessTheClassIsExempt() {
        assertThat(CallRules.violations(planted, type -> false))
                .hasSize(4)
                .anyMatch(text -> text.startsWith("nobody sleeps"))
                .anyMatch(text -> text.startsWith("words go to the log"))
                .anyMatch(text -> text.startsWith("time comes from") && text.contains("currentTimeMillis"))
                .anyMatch(text -> text.startsWith("time comes from") && text.contains("Instant.now"));
        assertThat(CallRules.violations(planted, type -> type.getSimpleName().equals("Stray")))
                .isEmpty();
    }

    @Test
    void longFilesLongMethodsManyArgumentsAndEmptyNamesAreFound() {
        String body = "int i = 0;\n".repeat(SourceRules.LONGEST_METHOD);
        String source =
                "class RoundsManager {\n RoundsManager(int a, int b, int c, int d, int e, int f) {}\n void go() {\n"
                        + body + "}\n record Wide(int a, int b, int c, int d, int e, int f) {} }\n";
        assertThat(SourceRules.violations("RoundsManager.java", source, 40))
                .containsExactlyInAnyOrder(
                        "RoundsManager.java has 45 lines, more than 40",
                        "RoundsManager.java: RoundsManager says nothing by ending in Manager",
                        "RoundsManager.java: a constructor takes 6 arguments, more than 5",
                        "RoundsManager.java: go has 42 lines, more than 40");
        String tidy = "class Rounds {\n Rounds(int a) {}\n void go() {\n"
                + "int i = 0;\n".repeat(SourceRules.LONGEST_METHOD - 2) + "}\n}\n";
        assertThat(SourceRules.violations("Rounds.java", tidy, 400)).isEmpty();
    }

    @Test
    void onlyTheCasesOfAParameterisedTestMayBeLong() {
        String arguments = "Arguments.of(1),\n".repeat(SourceRules.LONGEST_METHOD) + "Arguments.of(2)";
        String cases = "class RoundsTest {\n static Stream<Arguments> cases() {\n return Stream.of(" + arguments
                + ");\n}\n}\n";
        assertThat(SourceRules.violations("RoundsTest.java", cases, 500)).isEmpty();
        assertThat(SourceRules.violations("RoundsTest.java", cases.replace("return", "go();\nreturn"), 500))
                .hasSize(1);
        assertThat(SourceRules.violations("RoundsTest.java", cases.replace("<Arguments>", "<Round>"), 500))
                .hasSize(1);
    }
}
