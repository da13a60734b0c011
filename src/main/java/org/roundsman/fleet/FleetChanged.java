package org.roundsman.fleet;

/** Customers, sites, devices or credentials were changed and the change is committed. */
public record FleetChanged() {}
