package planted.polling;

import jakarta.persistence.EntityManager;

/** Planted: the ORM is not in the hot path. */
public record WithEntities(EntityManager entities) {}
