package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a keeper shares is seen by another, and what they take back is not. */
class SharingIT {
    private static final String PAGES = "/populations/MC";

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK.withoutScript());
    }

    @ParameterizedTest
    @MethodSource("looks")
    void what_is_shared_is_seen_and_what_is_taken_back_is_not(Look look) {
        try (var oyelaran = Visitor.keeper("oyelaran", look);
                var dov = Visitor.keeper("dov", look)) {
            var animal = PAGES + "/animals/"
                    + oyelaran.server
                            .as("oyelaran")
                            .get("/api/v1/populations/MC/animals?mine=true")
                            .path("items[0].number");
            choose(oyelaran, "Open pedigree");
            dov.open(animal);

            choose(oyelaran, "Private");
            assertThat(oyelaran.page.getByText("Nobody sees, computes with or counts any of it."))
                    .isVisible();
            dov.expecting("404");
            assertThat(dov.opened(animal).status()).isEqualTo(404);

            choose(oyelaran, "Open pedigree");
            dov.open(animal);
        }
    }

    private static void choose(Visitor keeper, String choice) {
        keeper.open(PAGES + "/sharing");
        var link = keeper.page.locator("a:text-is('" + choice + "')");
        if (link.count() == 0) {
            return; // it is what stands
        }
        keeper.press(link);
        keeper.pressButton("Choose this");
        keeper.page.waitForURL("**/sharing");
        assertThat(keeper.page.locator("li:has(.badge.good)")).containsText(choice);
    }
}
