package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WhereToTest {
    @Test
    void a_page_of_this_server_is_gone_on_to() {
        var wanted = URI.create("http://studbook.example/populations/MC/pairings?for=MC-H-4-%2A");
        assertThat(WhereTo.of(WhereTo.kept(wanted))).hasToString("/populations/MC/pairings?for=MC-H-4-%2A");
    }

    // OWASP Unvalidated Redirects and Forwards Cheat Sheet
    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example/",
                "///elsewhere.example",
                "/\\elsewhere.example",
                "javascript:alert(1)",
                "today",
                ""
            })
    void nobody_is_sent_to_another_server(String address) {
        var kept = Base64.getUrlEncoder().withoutPadding().encodeToString(address.getBytes(StandardCharsets.UTF_8));
        assertThat(WhereTo.of(kept)).hasToString("/");
    }

    @Test
    void what_is_no_cookie_of_ours_leads_to_the_first_page() {
        assertThat(WhereTo.of(null)).hasToString("/");
        assertThat(WhereTo.of("%%%")).hasToString("/");
    }
}
