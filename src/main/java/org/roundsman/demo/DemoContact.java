package org.roundsman.demo;

/** Whom to call at a site: an invented person with a number and an address that cannot exist. */
public record DemoContact(String name, String duty, String phone, String email) {}
