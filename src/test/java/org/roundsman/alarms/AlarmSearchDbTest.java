package org.roundsman.alarms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.alarms.DeskFixture.NOON;
import static org.roundsman.alarms.DeskFixture.clear;
import static org.roundsman.alarms.DeskFixture.raise;
import static org.roundsman.alarms.DeskFixture.silent;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmSearch.State;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/** The history, searched by everything that can be asked for. */
class AlarmSearchDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    private DeskFixture f;
    private AlarmKey lobby;
    private AlarmKey attic;
    private long otherCustomer;
    private AlarmKey yard;

    /** The lobby twice, once of them over; the attic busy and shelved; another customer's yard, acknowledged. */
    @BeforeEach
    void alarms() {
        f = new DeskFixture("alarm_search");
        lobby = silent(f.accessPoint("ap-lobby"));
        attic = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.radio(f.accessPoint("ap-attic"), 2));
        otherCustomer = f.fleet.customer("Thistledown Timber");
        yard = silent(f.fleet.accessPoint(f.fleet.site(otherCustomer, "Yard", "Europe/Berlin"), "ap-yard"));
        f.accept(
                raise(lobby, Severity.MAJOR, 0, "Silent for 3 min."),
                clear(lobby, 600, "Answers again."),
                raise(attic, Severity.WARNING, 700, "Utilisation 55 %."),
                raise(yard, Severity.CRITICAL, 800, "Silent."),
                raise(lobby, Severity.MINOR, 900, "Silent for 4 min."));
        f.desk.shelve(ALL, id(attic), NOON.plus(Duration.ofDays(1)), "film team");
        f.desk.acknowledge(ALL, id(yard), "");
    }

    private long id(AlarmKey key) {
        return f.book.active().get(key).id();
    }

    private static AlarmSearch search(
            String words, Optional<AlarmType> type, Optional<Severity> severity, State state) {
        return new AlarmSearch(
                words,
                OptionalLong.empty(),
                OptionalLong.empty(),
                OptionalLong.empty(),
                type,
                severity,
                Optional.empty(),
                Optional.empty(),
                state,
                1,
                10);
    }

    private static AlarmSearch words(String words) {
        return search(words, Optional.empty(), Optional.empty(), State.ANY);
    }

    private static AlarmSearch state(State state) {
        return search("", Optional.empty(), Optional.empty(), state);
    }

    private List<String> found(AlarmSearch search) {
        return f.book.search(ALL, search).items().stream()
                .map(OpenAlarm::resourceName)
                .toList();
    }

    @Test
    void everythingComesTheNewestFirst() {
        assertThat(found(AlarmSearch.everything(10)))
                .containsExactly("ap-lobby", "ap-yard", "ap-attic, radio 2", "ap-lobby");
        assertThat(f.book.search(ALL, AlarmSearch.everything(10), Long.MAX_VALUE, 3))
                .extracting(OpenAlarm::resourceName)
                .containsExactly("ap-lobby", "ap-yard", "ap-attic, radio 2");
    }

    @Test
    void wordsAreFoundInTextsNamesAndTypes() {
        assertThat(found(words("LOB"))).containsExactly("ap-lobby", "ap-lobby");
        assertThat(found(words("answers lobby"))).containsExactly("ap-lobby");
        assertThat(found(words("timber silent"))).containsExactly("ap-yard");
        assertThat(found(words("utilisation-high"))).containsExactly("ap-attic, radio 2");
        assertThat(found(words("nowhere"))).isEmpty();
        assertThat(found(words("' OR 1=1--"))).isEmpty();
    }

    @Test
    void typesSeveritiesAndStatesNarrowIt() {
        assertThat(found(search("", Optional.of(AlarmType.UTILISATION_HIGH), Optional.empty(), State.ANY)))
                .containsExactly("ap-attic, radio 2");
        assertThat(found(search("", Optional.empty(), Optional.of(Severity.MAJOR), State.ANY)))
                .containsExactly("ap-yard", "ap-lobby");
        assertThat(found(state(State.ACTIVE))).containsExactly("ap-lobby", "ap-yard", "ap-attic, radio 2");
        assertThat(found(state(State.CLEARED))).containsExactly("ap-lobby");
        assertThat(found(state(State.ACKNOWLEDGED))).containsExactly("ap-yard");
        assertThat(found(state(State.UNTOUCHED))).containsExactly("ap-lobby");
        assertThat(found(state(State.SHELVED))).containsExactly("ap-attic, radio 2");
        assertThat(found(state(State.CLOSED))).isEmpty();
    }

    @Test
    void timesAndPlacesNarrowIt() {
        assertThat(found(between(NOON.plusSeconds(601), NOON.plusSeconds(900))))
                .containsExactly("ap-yard", "ap-attic, radio 2");
        assertThat(found(between(NOON, NOON.plusSeconds(1)))).containsExactly("ap-lobby");
        AlarmSearch all = AlarmSearch.everything(10);
        assertThat(found(place(all, OptionalLong.of(otherCustomer), OptionalLong.empty())))
                .containsExactly("ap-yard");
        assertThat(found(place(all, OptionalLong.empty(), OptionalLong.of(f.site))))
                .hasSize(3);
    }

    private static AlarmSearch place(AlarmSearch s, OptionalLong customer, OptionalLong site) {
        return new AlarmSearch(
                s.words(), customer, site, s.deviceId(), s.type(), s.severity(), s.from(), s.to(), s.state(), 1, 10);
    }

    private static AlarmSearch between(Instant from, Instant to) {
        return new AlarmSearch(
                "",
                OptionalLong.empty(),
                OptionalLong.empty(),
                OptionalLong.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(from),
                Optional.of(to),
                State.ANY,
                1,
                10);
    }

    @Test
    void aScopeSeesItsOwnOnlyWhateverItAsksFor() {
        CustomerScope other = CustomerScope.of(otherCustomer);
        assertThat(f.book.search(other, AlarmSearch.everything(10)).total()).isEqualTo(1);
        AlarmSearch curious = place(AlarmSearch.everything(10), OptionalLong.of(f.customer), OptionalLong.empty());
        assertThat(f.book.search(other, curious).total()).isZero();
    }

    @Test
    void pagesEndWhereTheHistoryDoes() {
        IntStream.range(0, 25)
                .forEach(n -> f.accept(
                        clear(lobby, 1000 + 20 * n, "Back."), raise(lobby, Severity.MINOR, 1010 + 20 * n, "Gone.")));
        AlarmSearch s = words("lobby");
        AlarmSearch beyond = new AlarmSearch(
                "lobby",
                s.customerId(),
                s.siteId(),
                s.deviceId(),
                s.type(),
                s.severity(),
                s.from(),
                s.to(),
                s.state(),
                9,
                10);
        Page<OpenAlarm> page = f.book.search(ALL, beyond);
        assertThat(page.number()).isEqualTo(3);
        assertThat(page.total()).isEqualTo(27);
        assertThat(page.items()).hasSize(7);
    }

    @Test
    void theQualityCountsCausesOnly() {
        AlarmQuality quality = new AlarmQuality(f.database);
        QualityReport before = quality.report(NOON.minusSeconds(60), NOON.plusSeconds(3600), 1);
        assertThat(before.load().alarms()).isEqualTo(4);
        assertThat(before.rules().get(0).name()).isEqualTo("Does not answer");
        assertThat(before.devices().get(0).name()).isEqualTo("ap-lobby, Mill Lane");
        f.desk.plannedNow(java.util.Set.of(id(yard)));
        assertThat(quality.report(NOON.minusSeconds(60), NOON.plusSeconds(3600), 1)
                        .load()
                        .alarms())
                .isEqualTo(3);
    }
}
