package org.roundsman.web;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.properties.HasAnnotations;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.web.api.Needs;

/** Every address that the program answers at, read from its classes. */
final class Addresses {

    private static final Map<Class<? extends Annotation>, String> METHODS = Map.of(
            GET.class, "GET", POST.class, "POST", PUT.class, "PUT", PATCH.class, "PATCH", DELETE.class, "DELETE");

    private Addresses() {}

    /**
     * One of them.
     *
     * @param path with its parameters in braces
     * @param roles who may use it by its annotations; empty for whom nobody asks
     * @param needs the scope that a token must have; empty for pages
     * @param type what it takes as body, or empty
     */
    record Address(String method, String path, Set<Role> roles, Optional<TokenScope> needs, String type) {

        boolean api() {
            return path.startsWith("/api/v1");
        }

        boolean open() {
            return roles.isEmpty();
        }

        boolean changes() {
            return !method.equals("GET") && !method.equals("HEAD");
        }

        /** The same with an id in place of each parameter. */
        Address with(KnownIds ids) {
            return new Address(method, ids.fill(path), roles, needs, type);
        }

        @Override
        public String toString() {
            return method + " " + path;
        }
    }

    /** All of them; HEAD wherever there is GET. */
    static List<Address> all() {
        List<Address> declared = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.roundsman").stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .flatMap(type -> type.getMethods().stream().flatMap(method -> of(type, method)))
                        .toList();
        Stream<Address> heads = declared.stream()
                .filter(address -> address.method().equals("GET"))
                .map(a -> new Address("HEAD", a.path(), a.roles(), a.needs(), ""));
        return Stream.concat(declared.stream(), heads).toList();
    }

    private static Stream<Address> of(JavaClass type, JavaMethod method) {
        return METHODS.entrySet().stream()
                .filter(verb -> method.isAnnotatedWith(verb.getKey()))
                .map(verb -> new Address(
                        verb.getValue(), path(type, method), roles(type, method), needs(type, method), type(method)));
    }

    private static String path(JavaClass type, JavaMethod method) {
        String own = method.tryGetAnnotationOfType(Path.class).map(Path::value).orElse("");
        String whole = "/" + type.getAnnotationOfType(Path.class).value() + "/" + own;
        return whole.replaceAll("/+", "/").replaceAll("(.)/$", "$1");
    }

    /** What the method says, else the class, else nobody is asked who they are. */
    private static Set<Role> roles(JavaClass type, JavaMethod method) {
        return said(method).or(() -> said(type)).orElse(Set.of());
    }

    private static Optional<Set<Role>> said(HasAnnotations<?> place) {
        Optional<RolesAllowed> allowed = place.tryGetAnnotationOfType(RolesAllowed.class);
        if (allowed.isPresent()) {
            return Optional.of(Arrays.stream(allowed.get().value())
                    .map(Role::valueOf)
                    .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class))));
        }
        if (place.isAnnotatedWith(Authenticated.class)) {
            return Optional.of(EnumSet.allOf(Role.class));
        }
        return place.isAnnotatedWith(PermitAll.class) ? Optional.of(Set.of()) : Optional.empty();
    }

    private static Optional<TokenScope> needs(JavaClass type, JavaMethod method) {
        return method.tryGetAnnotationOfType(Needs.class)
                .or(() -> type.tryGetAnnotationOfType(Needs.class))
                .map(Needs::value);
    }

    private static String type(JavaMethod method) {
        return method.tryGetAnnotationOfType(Consumes.class)
                .map(consumes -> consumes.value()[0])
                .orElse("");
    }
}
