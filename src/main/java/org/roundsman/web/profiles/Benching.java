package org.roundsman.web.profiles;

import jakarta.enterprise.context.RequestScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.InputRejected;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.StoredWalks;
import org.roundsman.profiles.WalkDraft;
import org.roundsman.profiles.WalkFetches;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.FleetBoard;
import org.roundsman.snmp.WalkText;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Makes the workbench's first page, and takes walks. */
@RequestScoped
class Benching {

    private static final int MOST_DEVICES = 25;
    private static final int MOST_FAULTS_KEPT = 50;

    private final StoredWalks walks;
    private final WalkFetches fetches;
    private final Customers customers;
    private final FleetBoard board;
    private final Asking asking;

    Benching(StoredWalks walks, WalkFetches fetches, Customers customers, FleetBoard board, Asking asking) {
        this.walks = walks;
        this.fetches = fetches;
        this.customers = customers;
        this.board = board;
        this.asking = asking;
    }

    /** Who asks, and when. */
    @RequestScoped
    static class Asking {
        private final Visitor visitor;
        private final Writer writer;
        private final Clock clock;

        Asking(Visitor visitor, Writer writer, Clock clock) {
            this.visitor = visitor;
            this.writer = writer;
            this.clock = clock;
        }

        CustomerScope scope() {
            return visitor.scope();
        }

        boolean writes() {
            return writer.writes();
        }

        Instant now() {
            return clock.instant();
        }
    }

    BenchView view(String search, Faults wrong) {
        return view(search, Map.of("text", "", "name", ""), List.of(), wrong);
    }

    private BenchView view(String search, Map<String, String> entered, List<String> faulty, Faults wrong) {
        return new BenchView(
                search,
                search.isBlank() ? List.of() : found(search),
                walks.all(asking.scope()).stream().map(BenchView.Kept::of).toList(),
                customers.all(asking.scope()),
                fetches.all().stream().limit(8).map(BenchView.Reading::of).toList(),
                entered,
                faulty,
                wrong,
                asking.writes());
    }

    private List<BenchView.Found> found(String search) {
        BoardQuery query = new BoardQuery(
                search,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Set.of(),
                BoardQuery.Sort.NAME,
                false,
                1,
                MOST_DEVICES);
        return board.devices(asking.scope(), query).items().stream()
                .map(row -> new BenchView.Found(
                        row.deviceId(), row.name(), row.customer() + ", " + row.site() + ", " + row.host()))
                .toList();
    }

    /** The page again, with what is wrong; and the lines that could not be read, where nothing could. */
    BenchView refused(WalkForm form, Faults wrong) {
        WalkText text = WalkText.read(form.walk());
        List<String> faulty = text.faults().stream()
                .limit(MOST_FAULTS_KEPT)
                .map(f -> "line " + f.line() + ": " + f.reason())
                .toList();
        return view("", form.entered(), faulty, wrong);
    }

    /**
     * Keeps a walk; returns its id.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    long add(WalkForm form) {
        WalkText text = WalkText.read(form.walk());
        if (form.later() > 0) {
            StoredWalk first = walks.find(asking.scope(), form.later())
                    .orElseThrow(() -> new InputRejected(Map.of("walk", "the first walk is not there any more")));
            walks.addLater(first, text.walk(), asking.now());
            return first.id();
        }
        List<String> remarks = Stream.concat(
                        text.remarks().stream(),
                        text.faults().stream()
                                .limit(MOST_FAULTS_KEPT)
                                .map(f -> "line " + f.line() + " could not be read: " + f.reason()))
                .map(remark -> remark.replaceAll("\\p{Cntrl}+", " "))
                .toList();
        String name = form.shownName();
        return walks.add(new WalkDraft(
                        name,
                        form.customer() > 0 ? Optional.of(form.customer()) : Optional.empty(),
                        Optional.empty(),
                        "yes".equals(form.blank()),
                        text.walk(),
                        asking.now(),
                        remarks))
                .id();
    }
}
