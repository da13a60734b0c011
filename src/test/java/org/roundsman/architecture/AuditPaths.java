package org.roundsman.architecture;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.Entity;
import jakarta.persistence.EntityManager;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import java.lang.annotation.Annotation;
import java.sql.Statement;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.roundsman.audit.AuditEntries;
import org.roundsman.audit.AuditTrail;

/**
 * Follows calls through the code, lambdas and implementations of interfaces included, and finds ways to change something
 * from which none leads to the audit.
 */
final class AuditPaths {

    private static final Set<Class<? extends Annotation>> CHANGING =
            Set.of(POST.class, PUT.class, PATCH.class, DELETE.class);
    private static final Set<String> NOTING = Set.of("added", "changed", "did", "note", "add");
    private static final Set<String> WRITING_ENTITIES =
            Set.of("persist", "persistAndFlush", "delete", "deleteById", "deleteAll", "update", "merge", "remove");
    private static final Set<String> WRITING_ROWS =
            Set.of("executeUpdate", "executeLargeUpdate", "executeBatch", "executeLargeBatch");

    private final JavaClasses classes;

    AuditPaths(JavaClasses classes) {
        this.classes = classes;
    }

    /** Methods that answer requests which change something, and never lead to the audit. */
    Set<String> unheardRequests() {
        return names(
                methods().filter(AuditPaths::answersChanges).filter(method -> !reaches(method, AuditPaths::notes)));
    }

    /** Methods of these classes that others or the clock call, which lead to a write and never to the audit. */
    Set<String> unheardServices(Predicate<JavaClass> services) {
        return names(methods()
                .filter(method -> services.test(method.getOwner()))
                .filter(AuditPaths::calledFromOutside)
                .filter(method -> reaches(method, AuditPaths::writes))
                .filter(method -> !reaches(method, AuditPaths::notes)));
    }

    private Stream<JavaMethod> methods() {
        return classes.stream().flatMap(type -> type.getMethods().stream());
    }

    private static Set<String> names(Stream<JavaMethod> methods) {
        Set<String> names = new TreeSet<>();
        methods.forEach(method -> names.add(method.getOwner().getSimpleName() + "." + method.getName()));
        return names;
    }

    private static boolean answersChanges(JavaMethod method) {
        return CHANGING.stream().anyMatch(method::isAnnotatedWith);
    }

    private static boolean calledFromOutside(JavaMethod method) {
        boolean open = method.getModifiers().contains(JavaModifier.PUBLIC)
                && method.getOwner().getModifiers().contains(JavaModifier.PUBLIC);
        boolean byItself = method.isAnnotatedWith(Scheduled.class)
                || method.getParameters().stream().anyMatch(p -> p.isAnnotatedWith(Observes.class));
        return open || byItself;
    }

    private static boolean reaches(JavaCodeUnit start, Predicate<JavaCodeUnit> wanted) {
        Set<JavaCodeUnit> seen = new LinkedHashSet<>(List.of(start));
        Deque<JavaCodeUnit> open = new ArrayDeque<>(seen);
        while (!open.isEmpty()) {
            JavaCodeUnit unit = open.remove();
            if (wanted.test(unit)) {
                return true;
            }
            targets(unit).flatMap(AuditPaths::implementations).filter(seen::add).forEach(open::add);
        }
        return false;
    }

    private static Stream<? extends CodeUnitAccessTarget> targets(JavaCodeUnit unit) {
        return Stream.concat(
                unit.getCallsFromSelf().stream().map(call -> call.getTarget()),
                unit.getCodeUnitReferencesFromSelf().stream().map(reference -> reference.getTarget()));
    }

    private static Stream<JavaCodeUnit> implementations(CodeUnitAccessTarget target) {
        String[] parameters =
                target.getRawParameterTypes().stream().map(JavaClass::getName).toArray(String[]::new);
        Stream<JavaCodeUnit> declared = target.resolveMember().stream().map(JavaCodeUnit.class::cast);
        Stream<JavaCodeUnit> overriding = target.getOwner().getAllSubclasses().stream()
                .flatMap(type -> type.tryGetMethod(target.getName(), parameters).stream());
        return Stream.concat(declared, overriding).filter(unit -> ours(unit.getOwner()));
    }

    /** What happens inside of libraries is judged by the call that enters them. */
    private static boolean ours(JavaClass type) {
        boolean audit = type.isEquivalentTo(AuditTrail.class) || type.isEquivalentTo(AuditEntries.class);
        return !audit
                && (type.getPackageName().startsWith("org.roundsman")
                        || type.getPackageName().startsWith("quiet"));
    }

    private static boolean notes(JavaCodeUnit unit) {
        return targets(unit)
                .anyMatch(target -> NOTING.contains(target.getName())
                        && (target.getOwner().isEquivalentTo(AuditTrail.class)
                                || target.getOwner().isEquivalentTo(AuditEntries.class)));
    }

    private static boolean writes(JavaCodeUnit unit) {
        return targets(unit).anyMatch(AuditPaths::isWrite)
                || unit.getFieldAccesses().stream().anyMatch(access -> setsColumn(unit, access));
    }

    private static boolean isWrite(CodeUnitAccessTarget target) {
        boolean entity = target.getOwner().isAssignableTo(PanacheEntityBase.class)
                || target.getOwner().isAssignableTo(EntityManager.class);
        return entity && WRITING_ENTITIES.contains(target.getName())
                || target.getOwner().isAssignableTo(Statement.class) && WRITING_ROWS.contains(target.getName());
    }

    private static boolean setsColumn(JavaCodeUnit unit, JavaFieldAccess access) {
        JavaClass owner = access.getTargetOwner();
        return access.getAccessType() == JavaFieldAccess.AccessType.SET
                && owner.isAnnotatedWith(Entity.class)
                && !unit.getOwner().isEquivalentTo(owner.reflect());
    }
}
