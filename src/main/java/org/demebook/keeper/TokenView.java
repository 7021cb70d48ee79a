package org.demebook.keeper;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.demebook.rest.ShownTo;

/** A token in the form of RFC 6750, section 4; sent as {@code Authorization: Bearer <access_token>}. */
@ShownTo(ShownTo.Whom.MEMBERS)
public record TokenView(
        @JsonProperty("access_token") String accessToken,
        @JsonProperty("token_type") String tokenType,
        @JsonProperty("expires_in") long expiresInSeconds,
        String name) {}
