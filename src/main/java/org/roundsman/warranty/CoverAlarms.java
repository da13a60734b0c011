package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmType;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.rules.RuleBook;

/**
 * Raises and clears the alarms of warranties that end soon. What is raised already stays as it is, with its text kept up to
 * date: looking twice, or after a restart, changes nothing.
 */
@ApplicationScoped
class CoverAlarms {

    private final Warranties warranties;
    private final AlarmDesk desk;
    private final AlarmBook book;
    private final RuleBook rules;
    private final Clock clock;

    @Inject
    CoverAlarms(Warranties warranties, AlarmDesk desk, AlarmBook book, RuleBook rules, Clock clock) {
        this.warranties = warranties;
        this.desk = desk;
        this.book = book;
        this.rules = rules;
        this.clock = clock;
    }

    /** Looks at every site now. The calling thread must be in no transaction. */
    void look() {
        Set<Long> raised = book.active().keySet().stream()
                .filter(key -> key.type() == AlarmType.COVER_ENDING)
                .map(key -> key.resource().id())
                .collect(Collectors.toSet());
        desk.accept(
                EndingSoon.signals(warranties.all(CustomerScope.everyone()), rules.current(), raised, clock.instant()));
    }
}
