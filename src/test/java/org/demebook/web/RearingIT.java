package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** At the rack: a tap writes a meal down, another takes it back; on a phone with script, on a desk without. */
class RearingIT {
    private static final String PAGES = "/populations/TS";

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK.withoutScript());
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_young_of_a_litter_ate_and_did_not(Look look) {
        try (var wren = Visitor.keeper("wren", look)) {
            String litter =
                    wren.server.as("wren").get("/api/v1" + PAGES + "/litters").path("items[0].id");
            wren.open(PAGES + "/litters/" + litter + "/rearing");
            var card = wren.page.locator(".young:has([value=ate])").first();
            var number = card.locator("h2").innerText();
            int before = records(wren, number);

            wren.press(card.locator("button[value=ate]"));
            assertThat(wren.page.getByText(number + ": Meal, taken")).isVisible();
            assertThat(records(wren, number)).isEqualTo(before + 1);

            wren.pressButton("Take back");
            assertThat(wren.page.getByText(number + ": Meal, taken")).hasCount(0);
            assertThat(records(wren, number)).isEqualTo(before);
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void all_that_are_due_a_meal_were_fed_and_were_not(Look look) {
        try (var wren = Visitor.keeper("wren", look)) {
            wren.open(PAGES + "/today");
            Locator meals =
                    wren.page.locator("li.task.together:has([value=ate])").first();
            var many = meals.locator(".badge").innerText();

            wren.press(meals.locator("> form button"));
            assertThat(wren.page.getByText(many + ": Meal")).isVisible();

            wren.pressButton("Take back");
            assertThat(wren.page
                            .locator("li.task.together:has([value=ate]) .badge")
                            .first())
                    .hasText(many);
        }
    }

    private static int records(Visitor wren, String number) {
        return wren.server
                .as("wren")
                .get("/api/v1" + PAGES + "/animals/" + number + "/care-records?limit=200")
                .<List<?>>path("items")
                .size();
    }
}
