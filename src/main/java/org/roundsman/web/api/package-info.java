/**
 * The JSON API below /api/v1: resources of records, for programs with a personal token. No SQL and no rules: the roots of
 * features check what is entered.
 *
 * <p>A resource needs {@link org.roundsman.web.api.Needs} on itself or on each method, besides its roles; without one it is
 * refused. Bodies are records that implement {@link org.roundsman.web.api.ApiBody}, lists a {@link
 * org.roundsman.web.api.Listing}, answers to GET and PATCH a {@link org.roundsman.web.api.Tagged}, and what goes wrong a
 * {@link org.roundsman.web.api.Problem}.
 */
package org.roundsman.web.api;
