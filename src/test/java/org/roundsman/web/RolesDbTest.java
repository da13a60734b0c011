package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.web.Addresses.Address;

/** OWASP ASVS 5.0: 8.2.1, 8.2.2 and 8.4.1. Every address that the program knows is tried, not a list of them. */
@QuarkusTest
class RolesDbTest {

    /** Those that nobody need sign in for; each shows no data, but a calendar or a report to who knows its secret. */
    private static final Set<String> OPEN = Set.of(
            "/sign-in",
            "/sign-out",
            "/api/docs",
            "/api/problems",
            "/api/problems/refused",
            "/calendar/" + KnownIds.NOTHING + ".ics",
            "/report-link/" + KnownIds.NOTHING);

    private static final List<Address> ALL = Addresses.all();

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Test
    void theAddressesAreFound() {
        assertThat(ALL)
                .hasSizeGreaterThan(80)
                .anyMatch(a -> a.method().equals("DELETE"))
                .anyMatch(Address::api);
        assertThat(ALL.stream().filter(Address::open).map(a -> a.with(KnownIds.ofNothing())
                        .path()))
                .isSubsetOf(OPEN);
        assertThat(ALL).filteredOn(Address::api).allMatch(a -> a.needs().isPresent());
    }

    @Test
    void anUnknownParameterSaysWhereToAddIt() {
        assertThatThrownBy(() -> KnownIds.ofNothing().fill("/sites/{id}/gizmos/{gizmo}"))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("{gizmo}")
                .hasMessageContaining("KnownIds under “gizmos”");
    }

    @Test
    void aViewerFindsNothingOfAnotherCustomerOnAnyPage() {
        MarkedPlaces.Place theirs = places.place("Brackwater");
        Browser viewer =
                fixture.browser(Role.VIEWER, places.place("Quillfeather").customerId());
        String form = viewer.token("/password");
        for (Address address : of(false, theirs)) {
            Response answer = ask(viewer, form, address);
            requireNothing(answer, address, theirs);
        }
    }

    /** 8.4.1. */
    @Test
    void aViewersTokenFindsNothingOfAnotherCustomer() {
        MarkedPlaces.Place theirs = places.place("Brackwater");
        String token = places.place("Quillfeather").viewerToken();
        of(true, theirs).forEach(address -> requireNothing(Api.with(token).ask(address), address, theirs));
    }

    /** 8.4.1: the token of somebody who sees everybody, narrowed to one customer. */
    @ParameterizedTest
    @EnumSource(
            value = Role.class,
            names = {"TECHNICIAN", "ACCOUNT_MANAGER", "OWNER"})
    void aNarrowedTokenNeitherReadsNorAltersAnotherCustomer(Role role) {
        MarkedPlaces.Place theirs = places.place("Brackwater");
        long own = places.place("Quillfeather").customerId();
        String token = places.token(role, null, EnumSet.allOf(TokenScope.class), own);
        of(true, theirs).forEach(address -> requireNothing(Api.with(token).ask(address), address, theirs));
        assertThat(places.number("select count(*) from device where id = " + theirs.deviceId()))
                .isEqualTo(1);
        assertThat(places.number(
                        "select count(*) from personal_token where revoked_at is null and id = " + theirs.tokenId()))
                .isEqualTo(1);
    }

    /** The test itself: a marker that is to be seen is seen. */
    @Test
    void theOwnTokenShowsTheMarkerWhereverTheOthersMustNot() {
        MarkedPlaces.Place own = places.place("Quillfeather");
        for (String path : List.of(
                "/customers",
                "/customers/" + own.customerId(),
                "/sites",
                "/sites/" + own.siteId(),
                "/sites/" + own.siteId() + "/networks",
                "/devices",
                "/devices/" + own.deviceId(),
                "/devices/" + own.deviceId() + "/events",
                "/planned-work",
                "/planned-work/" + own.workId(),
                "/alarms",
                "/alarms/" + own.alarmId(),
                "/alarms/" + own.alarmId() + "/changes",
                "/alarms/" + own.alarmId() + "/episodes",
                "/reports",
                "/reports/" + own.reports().sentId(),
                "/reports/" + own.reports().sentId() + "/revisions",
                "/reports/" + own.reports().sentId() + "/figures",
                "/tokens")) {
            assertThat(Api.with(own.viewerToken()).get(path).asString())
                    .as(path)
                    .contains(own.marker());
        }
    }

    @Test
    void aNarrowedTokenShowsItToo() {
        MarkedPlaces.Place own = places.place("Quillfeather");
        String narrowed = places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), own.customerId());
        for (String path : List.of(
                "/changes",
                "/credentials",
                "/credentials/" + own.credentialId(),
                "/warranty/units",
                "/warranty/contracts",
                "/claims",
                "/claims/" + own.hardware().claimId(),
                "/spares",
                "/spares/" + own.hardware().spareId(),
                "/store-rooms",
                "/reports",
                "/devices/" + own.deviceId() + "/units")) {
            assertThat(Api.with(narrowed).get(path).asString()).as(path).contains(own.marker());
        }
    }

    private static List<Address> of(boolean api, MarkedPlaces.Place theirs) {
        return ALL.stream()
                .filter(address -> address.api() == api && !address.path().equals("/sign-out"))
                .map(address -> address.with(KnownIds.of(theirs)))
                .toList();
    }

    private static void requireNothing(Response answer, Address address, MarkedPlaces.Place theirs) {
        assertThat(answer.statusCode()).as(address.toString()).isLessThan(500);
        assertThat(answer.asString()).as(address.toString()).doesNotContain(theirs.marker());
        String at = "/" + theirs.siteId() + "|/" + theirs.deviceId() + "|/" + theirs.customerId() + "|/"
                + theirs.credentialId() + "|/" + theirs.accountId() + "|/" + theirs.tokenId() + "|/" + theirs.workId()
                + "|/" + theirs.alarmId() + theirs.cover().either() + "|/"
                + theirs.hardware().claimId() + "|/"
                + theirs.hardware().unitId() + "|/"
                + theirs.hardware().spareId() + "|/" + theirs.hardware().roomId()
                + theirs.reports().either();
        if (address.path().matches(".*(" + at + ")(/.*)?")) {
            assertThat(answer.statusCode()).as(address.toString()).isIn(403, 404);
        }
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everyRoleOpensThePagesThatTheirAnnotationsSayAndNoOther(Role role) {
        Long customer = role == Role.VIEWER ? places.place("Quillfeather").customerId() : null;
        Browser browser = fixture.browser(role, customer);
        String form = browser.token("/password");
        for (Address address : matrix(false)) {
            requireRole(ask(browser, form, address), address, role);
        }
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everyRolesTokenOpensWhatTheAnnotationsSayAndNoMore(Role role) {
        Long customer = role == Role.VIEWER ? places.place("Quillfeather").customerId() : null;
        String token = places.token(role, customer, Set.copyOf(TokenScope.usefulTo(role)), null);
        for (Address address : matrix(true)) {
            boolean scoped = TokenScope.usefulTo(role).contains(address.needs().orElseThrow());
            if (scoped || !address.roles().contains(role)) {
                requireRole(Api.with(token).ask(address), address, role);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(TokenScope.class)
    void aTokenOpensWhatItsScopeSaysAndNoMore(TokenScope scope) {
        String token = places.token(Role.OWNER, null, EnumSet.of(scope), null);
        for (Address address : matrix(true)) {
            TokenScope needed = address.needs().orElseThrow();
            boolean has = needed == scope || needed == TokenScope.READ;
            Response answer = Api.with(token).ask(address);
            if (has) {
                assertThat(answer.statusCode()).as(address.toString()).isNotEqualTo(403);
            } else {
                assertThat(answer.statusCode()).as(address.toString()).isEqualTo(403);
            }
            if (!has && !address.method().equals("HEAD")) {
                assertThat(answer.asString()).contains("lacks the scope “" + needed.word() + "”");
            }
        }
    }

    /** With ids of nothing: what is allowed changes nothing, and what is not is refused before anybody looks. */
    private static List<Address> matrix(boolean api) {
        return ALL.stream()
                .filter(address -> address.api() == api && !address.open())
                .map(address -> address.with(KnownIds.ofNothing()))
                .toList();
    }

    private static void requireRole(Response answer, Address address, Role role) {
        assertThat(answer.statusCode()).as(role + ": " + address).isLessThan(500);
        if (address.roles().contains(role)) {
            assertThat(answer.statusCode()).as(role + ": " + address).isNotIn(401, 403);
        } else {
            assertThat(answer.statusCode()).as(role + ": " + address).isEqualTo(403);
        }
    }

    @Test
    void withoutASignInNothingOpens() {
        for (Address address : matrix(false)) {
            Response answer = given().redirects()
                    .follow(false)
                    .contentType(ContentType.URLENC)
                    .request(address.method(), address.path());
            assertThat(answer.statusCode()).as(address.toString()).isIn(302, 401);
            if (answer.statusCode() == 302) {
                assertThat(answer.header("Location")).as(address.toString()).contains("/sign-in");
            }
        }
        for (Address address : matrix(true)) {
            Response answer = given().request(address.method(), address.path());
            assertThat(answer.statusCode()).as(address.toString()).isEqualTo(401);
            assertThat(answer.header("WWW-Authenticate")).startsWith("Bearer");
            assertThat(answer.contentType()).isEqualTo("application/problem+json");
        }
    }

    @Test
    void cookiesOpenNoAddressOfTheApiAndTokensNoPage() {
        Browser owner = fixture.browser(Role.OWNER, null);
        for (Address address : matrix(true)) {
            Response answer = owner.request().request(address.method(), address.path());
            assertThat(answer.statusCode()).as(address.toString()).isEqualTo(401);
        }
        assertThat(owner.request().get("/api;x=/v1/me").statusCode()).isIn(401, 404);
        String token = places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), null);
        for (Address address : matrix(false)) {
            Response answer =
                    Api.with(token).request().contentType(ContentType.URLENC).request(address.method(), address.path());
            assertThat(answer.statusCode()).as(address.toString()).isIn(302, 401);
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
        MarkedPlaces.Place place = places.place("Thistledown");
        Browser owner = fixture.browser(Role.OWNER, null);
        of(false, place).stream().filter(Address::changes).forEach(address -> {
            int status = owner.get(address.path()).statusCode();
            assertThat(status).as(address.toString()).isIn(200, 404, 405);
        });
        assertThat(owner.get("/devices/" + place.deviceId()).statusCode()).isEqualTo(200);
    }

    private static Response ask(Browser browser, String form, Address address) {
        return address.changes()
                ? browser.send(address.path(), form, Map.of())
                : browser.request().request(address.method(), address.path());
    }
}
