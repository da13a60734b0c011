/**
 * Customers, sites, devices, radios, networks, models, credentials and the customer scope: what people edit, and what
 * devices say about themselves. May import shared, system, audit, timeline. Owns customer, site, site_hours, site_contact,
 * model, credential, device, device_fact, device_survey, device_network, radio, network.
 */
package org.roundsman.fleet;
