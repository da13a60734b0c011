/** Benchmarks of the whole data path; nothing in the service uses them. */
package org.roundsman.boot.bench;
