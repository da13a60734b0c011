/**
 * What happened to a device and when: facts that changed, notifications that it sent, where it moved. May import shared
 * and system. Owns device_event.
 */
package org.roundsman.timeline;
