package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A weekly job: a sold neonate goes to its new keeper, who is a member, or becomes one. On a server of its own: animals move. */
class HandOverIT {
    private static final String MC = "/populations/MC";

    private static DemoServer server;

    @BeforeAll
    static void a_fresh_demo() {
        server = DemoServer.started();
    }

    @AfterAll
    static void it_ends() {
        server.close();
    }

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK, Look.PHONE.withoutScript());
    }

    @ParameterizedTest
    @MethodSource("looks")
    void wren_sells_a_young_ines_accepts_it_from_today_and_both_see_it(Look look) {
        try (var wren = Visitor.keeper(server, "wren", look);
                var ines = Visitor.keeper(server, "ines", look)) {
            var number = chosen(wren);
            wren.page.locator("[name=to]").fill("ines");
            wren.pressButton("Offer it");
            assertThat(wren.page.locator("main")).containsText("Offered to ines");
            var transfer = "/" + wren.where();

            ines.open(MC + "/today");
            ines.press(ines.page.locator("form[action^='%s/acceptance'] button".formatted(transfer)));
            assertThat(ines.page.locator("main")).containsText("it is in your collection");

            wren.open(transfer);
            assertThat(wren.page.locator("main")).containsText("ines accepted it");
            ines.open(MC + "/transfers");
            assertThat(row(ines, number)).containsText("You accepted it from wren");
            wren.open(MC + "/transfers");
            assertThat(row(wren, number)).containsText("ines accepted it");
        }
    }

    @Test
    void a_buyer_who_is_nobody_here_scans_the_code_and_has_the_animal() {
        try (var wren = Visitor.keeper(server, "wren", Look.PHONE);
                var buyer = Visitor.stranger(server.address(), Look.PHONE)) {
            var number = chosen(wren);
            wren.press(wren.page.locator("label:has([name=withClaimCode][value=true])"));
            wren.pressButton("Offer it");
            var link = wren.page.locator("figcaption .link").innerText();
            assertThat(Accessibility.faultsInBothAppearances(wren.page)).isEmpty();
            assertThat(Fit.faults(wren.page)).isEmpty();

            buyer.open(link.substring(link.indexOf("/claim")));
            assertThat(Accessibility.faultsInBothAppearances(buyer.page)).isEmpty();
            buyer.page.locator("[name=name]").fill("tamsin");
            buyer.page.locator("[name=fullName]").fill("Tamsin Reed");
            buyer.page.locator("[name=password]").fill("a quiet tide at noon");
            buyer.pressButton("Take it over");
            buyer.page.waitForURL("**" + MC + "/animals/" + number);

            buyer.open(MC + "/transfers");
            assertThat(buyer.page.locator("details.who summary")).hasText("tamsin");
            assertThat(row(buyer, number)).containsText("You claimed it from wren");
        }
    }

    /** The first young that the pages offer; the form to hand it over is open. */
    private static String chosen(Visitor giver) {
        giver.open(MC + "/transfers");
        giver.follow("Hand an animal over");
        var first = giver.page.locator("main .list a").first();
        var number = first.locator(".number").innerText();
        giver.press(first);
        giver.page.waitForURL("**animal=" + number);
        return number;
    }

    private static Locator row(Visitor keeper, String number) {
        return keeper.page.locator("tr", new Page.LocatorOptions().setHasText(number));
    }
}
