package org.roundsman.web.profiles;

/**
 * One profile in the list.
 *
 * @param address of its page
 * @param about what it says about itself
 * @param origin where the one in use comes from
 * @param state which version is in use, in words
 * @param changed who saved it last and when, or empty
 */
record ProfileLine(String name, String address, String about, String origin, String state, String changed) {}
