package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;

/** OWASP ASVS 5.0: 8.2.1, 8.2.2 and 8.4.1. Every address that the program knows is tried, not a list of them. */
@QuarkusTest
class RolesDbTest {

    /** Addresses that a viewer may open; they must show nothing of another customer. */
    private static final Set<String> OPEN = Set.of("/", "/board", "/sign-in", "/password", "/sign-out");

    @Inject
    FleetFixture fixture;

    /** A method and an address, with the place's own ids in it. */
    private record Address(String method, String path) {}

    @Test
    void aViewerFindsNothingOfAnotherCustomer() {
        FleetFixture.Place theirs = fixture.place("Brackwater");
        FleetFixture.Place own = fixture.place("Quillfeather");
        Browser viewer = fixture.browser(Role.VIEWER, own.customerId());
        List<Address> addresses = addresses(theirs).toList();
        assertThat(addresses).as("the addresses of the pages").hasSizeGreaterThan(30);
        for (Address address : addresses) {
            Response answer = ask(viewer, address);
            if (OPEN.contains(address.path())) {
                assertThat(answer.statusCode()).as(address.toString()).isLessThan(500);
                assertThat(answer.asString()).as(address.toString()).doesNotContain(theirs.customer());
            } else {
                assertThat(answer.statusCode()).as(address.toString()).isIn(403, 404);
            }
            viewer = address.path().equals("/sign-out") ? fixture.browser(Role.VIEWER, own.customerId()) : viewer;
        }
    }

    @Test
    void aViewerSeesTheirOwnSitesAndCannotChangeThem() {
        FleetFixture.Place own = fixture.place("Quillfeather");
        Browser viewer = fixture.browser(Role.VIEWER, own.customerId());
        assertThat(viewer.get("/").asString()).contains(own.customer());
        assertThat(viewer.get("/sites/" + own.siteId()).statusCode()).isEqualTo(200);
        String device = viewer.get("/devices/" + own.deviceId()).asString();
        assertThat(device).contains("Pier AP of " + own.customer()).doesNotContain("Poll now");
        for (String path : List.of("/devices/" + own.deviceId() + "/poll", "/devices/" + own.deviceId())) {
            assertThat(viewer.post("/password", path, Map.of()).statusCode()).isEqualTo(403);
        }
    }

    @Test
    void onlyTheOwnerLooksAfterPeople() {
        for (Role role : List.of(Role.TECHNICIAN, Role.ACCOUNT_MANAGER)) {
            Browser browser = fixture.browser(role, null);
            assertThat(browser.get("/people").statusCode()).isEqualTo(403);
            Map<String, String> fields = Map.of("name", "intruder", "role", "OWNER");
            assertThat(browser.post("/password", "/people", fields).statusCode())
                    .isEqualTo(403);
        }
        assertThat(fixture.browser(Role.OWNER, null).get("/people").asString()).doesNotContain("intruder");
    }

    @Test
    void theFleetIsOpenToTheFirmsOwnPeople() {
        FleetFixture.Place place = fixture.place("Thistledown");
        for (Role role : List.of(Role.TECHNICIAN, Role.ACCOUNT_MANAGER, Role.OWNER)) {
            Browser browser = fixture.browser(role, null);
            assertThat(browser.get("/sites/" + place.siteId() + "/edit").statusCode())
                    .isEqualTo(200);
            assertThat(browser.get("/devices/" + place.deviceId()).asString()).contains("Poll now");
        }
    }

    /** 3.5.3: a link changes nothing; what changes something answers to POST alone. */
    @Test
    void linksChangeNothing() {
        FleetFixture.Place place = fixture.place("Thistledown");
        Browser owner = fixture.browser(Role.OWNER, null);
        addresses(place).filter(address -> address.method().equals("POST")).forEach(address -> {
            int status = owner.get(address.path()).statusCode();
            assertThat(status).as(address.toString()).isIn(200, 404, 405);
        });
        assertThat(owner.get("/devices/" + place.deviceId()).statusCode()).isEqualTo(200);
    }

    private static Response ask(Browser viewer, Address address) {
        return address.method().equals("GET")
                ? viewer.get(address.path())
                : viewer.post("/password", address.path(), Map.of());
    }

    private static Stream<Address> addresses(FleetFixture.Place place) {
        return new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.roundsman").stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .flatMap(type -> type.getMethods().stream()
                                .filter(m -> m.isAnnotatedWith(GET.class) || m.isAnnotatedWith(POST.class))
                                .map(method -> new Address(
                                        method.isAnnotatedWith(GET.class) ? "GET" : "POST",
                                        path(type, method, place))));
    }

    private static String path(JavaClass type, JavaMethod method, FleetFixture.Place place) {
        String own = method.isAnnotatedWith(Path.class)
                ? method.getAnnotationOfType(Path.class).value()
                : "";
        String path = ("/" + type.getAnnotationOfType(Path.class).value() + "/" + own).replaceAll("/+", "/");
        long id = path.startsWith("/sites")
                ? place.siteId()
                : path.startsWith("/customers")
                        ? place.customerId()
                        : path.startsWith("/credentials") ? place.credentialId() : place.deviceId();
        return path.replaceAll("\\{[a-zA-Z]+}", String.valueOf(id)).replaceAll("(.)/$", "$1");
    }
}
