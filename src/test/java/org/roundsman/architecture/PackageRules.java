package org.roundsman.architecture;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What the package table forbids. Each rule gives the violations it found, in words. */
final class PackageRules {

    private static final Set<String> CONTAINER = Set.of("jakarta.enterprise.", "jakarta.inject.", "io.quarkus.");
    private static final Set<String> SQL = Set.of("java.sql.", "javax.sql.", "org.postgresql.");
    private static final Set<String> ORM = Set.of("jakarta.persistence.", "org.hibernate.", "io.quarkus.hibernate.");

    /** Not a way to ask the database anything: a page that says that it is away has to tell this from other failures. */
    private static final String LOST_DATABASE = "java.sql.SQLException";

    private final String root;
    private final PackageTable table;

    /** Rules for the packages right below this one. */
    PackageRules(String root, PackageTable table) {
        this.root = root;
        this.table = table;
    }

    /** The table names the packages that exist, and no others. */
    List<String> tableIsComplete(JavaClasses classes) {
        Set<String> existing = classes.stream()
                .map(JavaClass::getPackageName)
                .map(this::feature)
                .flatMap(Optional::stream)
                .collect(Collectors.toCollection(TreeSet::new));
        List<String> violations = new ArrayList<>();
        existing.stream()
                .filter(name -> !table.mayImport().containsKey(name))
                .forEach(name -> violations.add("package " + name + " is missing from the table"));
        table.mayImport().keySet().stream()
                .filter(name -> !existing.contains(name))
                .forEach(name -> violations.add("the table names " + name + ", which does not exist"));
        return violations;
    }

    /** A package imports what its row allows, and of others only their roots. */
    List<String> importsFollowTheTable(JavaClasses classes) {
        List<String> violations = new ArrayList<>();
        for (JavaClass origin : classes) {
            for (Dependency dependency : origin.getDirectDependenciesFromSelf()) {
                check(dependency).ifPresent(fault -> violations.add(fault + ": " + dependency.getDescription()));
            }
        }
        return violations;
    }

    private Optional<String> check(Dependency dependency) {
        String targetPackage =
                dependency.getTargetClass().getBaseComponentType().getPackageName();
        Optional<String> from = feature(dependency.getOriginClass().getPackageName());
        Optional<String> to = feature(targetPackage);
        if (from.isEmpty() || to.isEmpty() || from.equals(to)) {
            return Optional.empty();
        }
        if (!table.mayImport().getOrDefault(from.get(), Set.of()).contains(to.get())) {
            return Optional.of(from.get() + " may not import " + to.get());
        }
        boolean inner = !targetPackage.equals(root + "." + to.get());
        return inner ? Optional.of("sub-packages of " + to.get() + " are its own") : Optional.empty();
    }

    /** Plain packages know no container and no database, pages no SQL, and the hot path no ORM. */
    List<String> foreignLibrariesStayOut(JavaClasses classes) {
        Map<String, Set<String>> forbidden = Map.of(
                "shared", union(CONTAINER, SQL),
                "measure", union(CONTAINER, SQL),
                "snmp", union(CONTAINER, SQL),
                "web", union(SQL, ORM),
                "polling", ORM,
                "readings", ORM);
        List<String> violations = new ArrayList<>();
        for (JavaClass origin : classes) {
            Set<String> prefixes = feature(origin.getPackageName())
                    .map(name -> forbidden.getOrDefault(name, Set.of()))
                    .orElse(Set.of());
            for (Dependency dependency : origin.getDirectDependenciesFromSelf()) {
                String target =
                        dependency.getTargetClass().getBaseComponentType().getName();
                if (!target.equals(LOST_DATABASE) && prefixes.stream().anyMatch(target::startsWith)) {
                    violations.add(target + " has no place here: " + dependency.getDescription());
                }
            }
        }
        return violations;
    }

    private static Set<String> union(Set<String> some, Set<String> more) {
        Set<String> all = new TreeSet<>(some);
        all.addAll(more);
        return all;
    }

    /** "fleet" for org.roundsman.fleet and everything below it. */
    private Optional<String> feature(String packageName) {
        if (!packageName.startsWith(root + ".")) {
            return Optional.empty();
        }
        return Optional.of(packageName.substring(root.length() + 1).split("\\.")[0]);
    }
}
