package org.demebook.keeper;

import java.time.Instant;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * An invitation, shown once.
 *
 * @param secret to be sent to the invited one, who gives it with POST /api/v1/invitations/acceptances
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record InvitationView(String secret, @Nullable String population, Instant expiresAt) {}
