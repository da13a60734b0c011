package org.roundsman.boot;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import org.roundsman.polling.RoundsKeeper;
import org.roundsman.traps.TrapReceiver;

/** Starts and stops the parts of the central role in the order that keeps data whole. */
@ApplicationScoped
class Central {

    private final DemoConfig config;
    private final DemoRun demo;
    private final DemoSignIns signIns;
    private final RoundsKeeper rounds;
    private final TrapReceiver traps;

    @Inject
    Central(DemoConfig config, DemoRun demo, DemoSignIns signIns, RoundsKeeper rounds, TrapReceiver traps) {
        this.config = config;
        this.demo = demo;
        this.signIns = signIns;
        this.rounds = rounds;
        this.traps = traps;
    }

    void start(@Observes @Priority(5_000) StartupEvent event) {
        if (config.enabled()) {
            demo.start();
            signIns.ensure();
        }
        rounds.start();
        traps.start();
    }

    void stop(@Observes @Priority(100) ShutdownEvent event) {
        traps.stop();
        rounds.stop();
        demo.stop();
    }
}
