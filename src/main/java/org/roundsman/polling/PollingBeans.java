package org.roundsman.polling;

import io.micrometer.core.instrument.MeterRegistry;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Disposes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpVisitor;

/** Makes the plain parts of polling injectable. */
@ApplicationScoped
class PollingBeans {

    @Produces
    @Singleton
    SnmpVisitor visitor(PollingConfig config, ProfilesInUse profiles, Clock clock) throws IOException {
        ProfileSet set = profiles.begin(config.profiles().orElse(List.of()));
        SnmpVisitor visitor = SnmpVisitor.open(config.snmp(), set, clock);
        profiles.whenChanged(visitor::use);
        return visitor;
    }

    void close(@Disposes SnmpVisitor visitor) {
        visitor.close();
    }

    @Produces
    @Singleton
    Rounds rounds(SnmpVisitor visitor, ReadingSink sink, PollingConfig config, Clock clock, MeterRegistry registry) {
        return new Rounds(visitor::visit, sink, config.rounds(), clock, registry);
    }

    void close(@Disposes Rounds rounds) {
        rounds.close();
    }
}
