package org.roundsman.architecture;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** Calls that main code does not make: time comes from an injected clock, words go to the log, nobody sleeps. */
final class CallRules {

    private static final Set<Class<?>> TIMES =
            Set.of(Instant.class, LocalDate.class, LocalDateTime.class, OffsetDateTime.class, ZonedDateTime.class);

    /** What is forbidden, with the reason that a reader of the failure needs. */
    private static final Map<String, Predicate<JavaAccess<?>>> FORBIDDEN = Map.of(
            "nobody sleeps: use a scheduler or a condition", access -> is(access, Thread.class, "sleep"),
            "words go to the log", access -> is(access, System.class, "out") || is(access, System.class, "err"),
            "time comes from an injected Clock",
                    access -> is(access, System.class, "currentTimeMillis")
                            || is(access, Clock.class, "systemUTC")
                            || is(access, Clock.class, "systemDefaultZone")
                            || TIMES.stream().anyMatch(type -> is(access, type, "now")) && takesNoClock(access));

    private CallRules() {}

    /**
     * The violations.
     *
     * @param tools classes that are command-line tools or hand out the clock: they may do what others may not
     */
    static List<String> violations(JavaClasses classes, Predicate<JavaClass> tools) {
        List<String> violations = new ArrayList<>();
        for (JavaClass origin : classes) {
            if (tools.test(origin)) {
                continue;
            }
            for (JavaAccess<?> access : origin.getAccessesFromSelf()) {
                FORBIDDEN.forEach((reason, forbidden) -> {
                    if (forbidden.test(access)) {
                        violations.add(reason + ": " + access.getDescription());
                    }
                });
            }
        }
        return violations;
    }

    private static boolean is(JavaAccess<?> access, Class<?> owner, String name) {
        return access.getTargetOwner().isEquivalentTo(owner)
                && access.getTarget().getName().equals(name);
    }

    private static boolean takesNoClock(JavaAccess<?> access) {
        return !access.getTarget().getFullName().contains(Clock.class.getName());
    }
}
