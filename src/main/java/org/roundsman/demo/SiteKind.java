package org.roundsman.demo;

/** What goes on at a site: decides its hours, its models, and how many people are there when. */
public enum SiteKind {
    CLINIC,
    SHOP,
    PIER,
    SCHOOL,
    HOTEL,
    TIMBER_YARD,
    OFFICE
}
