package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions.HasCountOptions;
import com.microsoft.playwright.options.AriaRole;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Coordinating pairings across collections, from the question to who the other is; and a season, from the draft to the answers. */
class CoordinationIT {
    private static final String MARROWFIN = "/populations/MC";
    private static final List<String> OTHERS = List.of("ines", "dov", "oyelaran");
    private static final double AS_LONG_AS_A_PLAN_TAKES = 60_000;

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK.withoutScript());
    }

    @ParameterizedTest
    @MethodSource("looks")
    void who_asks_for_a_partner_learns_whose_it_is_when_the_other_side_agrees(Look look) {
        try (var server = DemoServer.started()) {
            OTHERS.forEach(keeper -> shareNoMoreThanComputing(server, keeper));
            String request;
            try (var wren = Visitor.keeper(server, "wren", look)) {
                wren.open(MARROWFIN + "/pairings");
                wren.press(wren.page.locator("main .list a[href*='for=']").first());
                wren.page.waitForURL("**/pairings?for=*");
                wren.press(wren.page.locator("a[href$='/unnamed-partners']"));
                wren.page.waitForURL("**/unnamed-partners");
                wren.press(wren.page.locator("main form button"));
                assertThat(wren.page.locator(".error")).isVisible();

                wren.press(wren.page.locator("label:has([name=partner])").first());
                wren.page.locator("[name=words]").fill("She has bred twice, and has room here.");
                wren.press(wren.page.locator("main form button"));
                wren.page.waitForURL("**/approaches/*");
                request = wren.where();
            }
            var asked = OTHERS.stream()
                    .filter(keeper ->
                            server.as(keeper).get("/api/v1/" + request).statusCode() == 200)
                    .toList();
            assertThat(asked).hasSize(1);
            try (var other = Visitor.keeper(server, asked.get(0), look)) {
                other.open(MARROWFIN + "/approaches");
                other.press(other.page.locator("main .list a").first());
                other.page.waitForURL("**/approaches/*");
                assertThat(other.page.locator("main")).containsText("She has bred twice");
                assertThat(other.page.locator("main")).not().containsText("wren");
                other.press(other.page.locator("form[action*='/agreement'] button"));
                assertThat(other.page.locator("main")).containsText("wren");
            }
            try (var wren = Visitor.keeper(server, "wren", look)) {
                wren.open("/" + request);
                assertThat(wren.page.locator("main")).containsText(asked.get(0));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_season_is_drafted_issued_and_answered_with_one_tap_a_side(Look look) {
        try (var server = DemoServer.started()) {
            try (var wren = Visitor.keeper(server, "wren", look)) {
                wren.open(MARROWFIN + "/season-drafts/new");
                wren.page.locator("[name=littersAtMost]").fill("3");
                wren.press(wren.page.locator("main form[action*='/season-drafts'] .primary"));
                wren.page.waitForURL("**/season-drafts/*");
                var issue = wren.page.locator("form[action*='/season-plans?once='] button");
                assertThat(issue).hasCount(1, new HasCountOptions().setTimeout(AS_LONG_AS_A_PLAN_TAKES));
                wren.press(issue);
                wren.page.waitForURL("**/season");
                accept(wren, 0);
            }
            try (var oyelaran = Visitor.keeper(server, "oyelaran", look)) {
                oyelaran.open(MARROWFIN + "/season");
                int wanted = accepts(oyelaran.page).count();
                for (int left = wanted; left > 0; left--) {
                    accept(oyelaran, left - 1);
                }
                assertThat(oyelaran.page.locator("#recommendations")).containsText("wren");
            }
            try (var wren = Visitor.keeper(server, "wren", look)) {
                wren.open(MARROWFIN + "/season");
                assertThat(wren.page.locator("#recommendations")).containsText("oyelaran");
                wren.page.locator("#recommendations details summary").first().click();
                wren.page.locator("#recommendations select").first().selectOption("no-room");
                wren.press(
                        wren.page.getByRole(AriaRole.BUTTON, named("Answer so")).first());
                assertThat(wren.page.locator("#recommendations")).not().containsText("oyelaran");
            }
        }
    }

    private static void accept(Visitor keeper, int left) {
        keeper.press(accepts(keeper.page).first());
        assertThat(accepts(keeper.page)).hasCount(left);
    }

    private static Locator accepts(Page page) {
        return page.locator("#recommendations form:has([value=accept]) button");
    }

    private static Page.GetByRoleOptions named(String name) {
        return new Page.GetByRoleOptions().setName(name);
    }

    private static void shareNoMoreThanComputing(DemoServer server, String keeper) {
        var collections = server.as(keeper)
                .get("/api/v1" + MARROWFIN + "/collections")
                .then()
                .statusCode(200)
                .extract()
                .<List<String>>path("id");
        for (var collection : collections) {
            server.as(keeper)
                    .body(Map.of("choice", "compute-only"))
                    .put("/api/v1" + MARROWFIN + "/collections/" + collection + "/sharing")
                    .then()
                    .statusCode(200);
        }
    }
}
