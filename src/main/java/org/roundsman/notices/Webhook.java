package org.roundsman.notices;

import java.time.Instant;

/**
 * A webhook as its person sees it; never its secret.
 *
 * @param person sign-in name of whose it is
 * @param secretAt when its secret was made
 */
public record Webhook(
        long id,
        long accountId,
        String person,
        String name,
        String url,
        boolean enabled,
        Instant createdAt,
        Instant secretAt) {}
