package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Somebody has bought a snake, has its number on paper, and looks up where it comes from. */
class BoughtAnimalIT {
    private static final String ON_THE_PAPER = "mc h 25 o"; // in the demo a young of 13 and 14

    static Look[] looks() {
        return new Look[] {Look.PHONE, Look.DESK, Look.PHONE.withoutScript()};
    }

    @ParameterizedTest
    @MethodSource("looks")
    void its_ancestry_is_two_steps_from_its_number(Look look) {
        try (var ines = Visitor.keeper("ines", look)) {
            ines.open("/populations/MC/today");

            ines.page.locator("header [name=q]").fill(ON_THE_PAPER);
            ines.page.locator("header [name=q]").press("Enter");
            ines.page.waitForURL("**/populations/MC/animals/MC-H-25-O");
            ines.press(ines.page.locator("nav.local a[href$='/ancestry']"));

            ines.page.waitForURL("**/animals/MC-H-25-O/ancestry");
            var chart = ines.page.locator(".scroll > svg.chart");
            assertThat(chart.count()).isEqualTo(1);
            assertThat(chart.locator("a").count()).isGreaterThanOrEqualTo(6);
            assertThat(ines.page.locator(".outline").innerText()).contains("MC-H-13-W", "MC-H-14-U", "MC-H-3-Y");
        }
    }

    @Test
    void it_is_told_how_it_is_related_to_ones_own() {
        try (var ines = Visitor.keeper("ines", Look.PHONE)) {
            ines.open("/populations/MC/animals/MC-H-25-O/kinship");

            // its sire 14, and 12, the brother of its dam 13: 1/4 and 1/8 (the demo's worked pedigree)
            assertThat(row(ines, "MC-H-14-U").innerText()).contains("1/4");
            assertThat(row(ines, "MC-H-12-Y").innerText()).contains("1/8");
        }
    }

    private static Locator row(Visitor visitor, String number) {
        return visitor.page.locator("table.kin tr:has(th a:text-is('" + number + "'))");
    }

    @Test
    void a_key_leads_from_a_search_to_what_was_meant() {
        try (var wren = Visitor.keeper("wren", Look.DESK)) {
            wren.open("/populations/TS/animals");

            wren.page.keyboard().press("/");
            wren.page.keyboard().type("li");
            wren.page.keyboard().press("Enter");
            var second = wren.page.locator("[data-result='2']");
            second.waitFor();
            var wanted = second.getAttribute("href");
            wren.page.keyboard().press("2");

            wren.page.waitForURL("**" + wanted);
        }
    }
}
