package org.demebook.keeper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.smallrye.jwt.build.Jwt;
import io.smallrye.jwt.build.JwtClaimsBuilder;
import java.util.Base64;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class VerifiedTokensTest {
    @ConfigProperty(name = "quarkus.oidc.token.issuer")
    String issuer;

    @Test
    void a_token_that_was_found_valid_ends_when_it_says() throws InterruptedException {
        var token = ofWren().expiresIn(3).sign();
        assertThat(status(token)).isEqualTo(200);
        assertThat(status(token)).isEqualTo(200);
        Thread.sleep(3500);
        assertThat(status(token)).isEqualTo(401);
    }

    @Test
    void a_token_with_a_changed_claim_or_signature_is_refused_beside_the_one_that_was_found_valid() {
        var token = Colony.token(WREN);
        assertThat(status(token)).isEqualTo(200);

        var parts = token.split("\\.");
        var claims = new String(Base64.getUrlDecoder().decode(parts[1]));
        var raised = claims.replace("\"keeper\"", "\"administrator\"");
        assertThat(raised).isNotEqualTo(claims);
        assertThat(status(parts[0] + "." + encoded(raised) + "." + parts[2])).isEqualTo(401);
        var last = parts[2].charAt(0) == 'A' ? 'B' : 'A';
        assertThat(status(parts[0] + "." + parts[1] + "." + last + parts[2].substring(1)))
                .isEqualTo(401);
    }

    @Test
    void two_tokens_of_one_keeper_keep_their_own_roles() {
        var none = ofWren().groups("guest").expiresIn(60).sign();
        assertThat(status(Colony.token(WREN))).isEqualTo(200);
        for (int i = 0; i < 2; i++) {
            assertThat(status(none)).isEqualTo(403);
        }
        assertThat(status(Colony.token(WREN))).isEqualTo(200);
    }

    private JwtClaimsBuilder ofWren() {
        var claims = new String(Base64.getUrlDecoder().decode(Colony.token(WREN).split("\\.")[1]));
        var subject = claims.replaceFirst(".*\"sub\":\"([^\"]+)\".*", "$1");
        return Jwt.issuer(issuer).subject(subject).preferredUserName(WREN).groups("keeper");
    }

    private static String encoded(String claims) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(claims.getBytes());
    }

    private static int status(String token) {
        return anonymous()
                .auth()
                .preemptive()
                .oauth2(token)
                .get("/api/v1/populations")
                .statusCode();
    }
}
