package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A weekly job: a coordinator counts and publishes, and whoever comes by reads it without signing in. */
class PublishedCountsIT {
    private static final double PATIENCE_MILLIS = 60_000;

    static Stream<Look> looks() {
        return Stream.of(Look.DESK, Look.PHONE);
    }

    @ParameterizedTest
    @MethodSource("looks")
    void counts_are_published_and_seen_by_anybody(Look look) {
        String address;
        try (var wren = Visitor.keeper("wren", look)) {
            wren.open("/populations/MC/counts");
            var day = dayNotCounted(wren.page);
            wren.follow("Count and publish");
            wren.page.getByText("cannot be changed or taken back").waitFor();

            // not ticked: nothing happens, and the day stays as it was typed
            wren.page.locator("[name=countedOn]").fill(day.toString());
            wren.pressButton("Count and publish");
            wren.page.locator("#e-understood").waitFor();
            assertThat(wren.page.locator("[name=countedOn]").inputValue()).isEqualTo(day.toString());

            wren.press(wren.page.locator("label:has([name=understood])"));
            wren.pressButton("Count and publish");
            link(wren.page, "The published counts").waitFor(new Locator.WaitForOptions().setTimeout(PATIENCE_MILLIS));
            wren.follow("The published counts");
            address = "/populations/MC/counts/" + day;
            wren.page.waitForURL("**" + address);
        }
        try (var anybody = Visitor.stranger(look)) {
            anybody.open("/");
            anybody.follow("Marrowfin Cay");
            anybody.follow("All published counts");
            anybody.press(anybody.page.locator("a[href='" + address + "']"));
            anybody.page.waitForURL("**" + address);
            assertThat(anybody.page.locator("h1").innerText()).contains("Marrowfin Cay");
            assertThat(anybody.page.locator(".figure").first().innerText()).contains("20");
        }
    }

    private static Locator link(Page page, String name) {
        return page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name));
    }

    /** The latest before today of which there are no counts: a release is never made again. */
    private static LocalDate dayNotCounted(Page page) {
        var day = LocalDate.now().minusDays(1);
        while (page.locator("a[href$='/counts/" + day + "']").count() > 0) {
            day = day.minusDays(1);
        }
        return day;
    }
}
