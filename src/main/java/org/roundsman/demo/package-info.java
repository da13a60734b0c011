/** The invented fleet: a generative model, agents on loopback, faults, history. Has its own OID tables, never the decoder's. May import shared, system, measure, fleet. Owns demo_history. */
package org.roundsman.demo;
