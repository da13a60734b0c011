package org.roundsman.readings;

/** Says how far storing is behind the rounds. Safe between threads. */
public interface BacklogSource {

    Backlog backlog();
}
