package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Keeps others from changing a thing between a look at it and a change that rests on that look. */
@ApplicationScoped
public class FleetHold {

    /** What can be held. */
    public enum Thing {
        CUSTOMER(Customer.class),
        SITE(Site.class),
        DEVICE(Device.class),
        CREDENTIAL(Credential.class),
        MODEL(Model.class);

        private final Class<?> type;

        Thing(Class<?> type) {
            this.type = type;
        }
    }

    private final EntityManager entities;

    FleetHold(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Does some work in one transaction in which nobody else changes that thing. A thing that is not there is not held;
     * the work finds that out by itself. What the work throws undoes it.
     */
    @Transactional
    public void during(Thing thing, long id, Runnable work) {
        entities.find(thing.type, id, LockModeType.PESSIMISTIC_WRITE);
        work.run();
    }
}
