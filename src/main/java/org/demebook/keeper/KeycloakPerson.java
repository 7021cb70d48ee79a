package org.demebook.keeper;

import org.eclipse.microprofile.jwt.Claims;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jspecify.annotations.Nullable;

/**
 * Somebody with an account in Keycloak, as Keycloak tells it.
 *
 * @param subject Keycloak's id of the account; it stays when the username changes
 * @param username of one account at a time; null in a token that does not carry the profile
 * @param fullName null where no name was given
 */
record KeycloakPerson(
        String subject, @Nullable String username, @Nullable String fullName) {
    static KeycloakPerson of(JsonWebToken token) {
        return new KeycloakPerson(
                token.getSubject(), token.getClaim(Claims.preferred_username), token.getClaim("name"));
    }
}
