package org.roundsman.dispatch.work;

import io.micrometer.core.instrument.MeterRegistry;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import javax.sql.DataSource;
import org.roundsman.audit.AuditTrail;
import org.roundsman.dispatch.ReportsConfig;
import org.roundsman.dispatch.store.Store;

/** What reports are kept and sent with, from the container. */
@ApplicationScoped
class DispatchBeans {

    @Produces
    @Singleton
    Parts parts(DataSource database, Making making, AuditTrail audit, ReportsConfig config, Clock clock) {
        return new Parts(new Store(database), making, audit, config, clock);
    }

    @Produces
    @Singleton
    DispatchMeters meters(MeterRegistry registry) {
        return new DispatchMeters(registry);
    }
}
