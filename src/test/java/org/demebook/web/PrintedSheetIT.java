package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page behind the QR code of a hand-over sheet, as whoever has bought a snake sees it on a phone. */
class PrintedSheetIT {
    private static String page;
    private static String number;

    @BeforeAll
    static void the_sheet_that_wren_issued_for_a_young() {
        var server = DemoServer.shared();
        List<String> animals = server.as("wren")
                .get("/api/v1/populations/TS/transfers?limit=200")
                .path("items.animal.number");
        for (var animal : animals) {
            List<String> codes = server.as("wren")
                    .get("/api/v1/populations/TS/animals/" + animal + "/handover-sheets")
                    .path("items.code");
            if (codes != null && !codes.isEmpty()) {
                page = "/sheets/" + codes.get(0);
                number = animal;
                return;
            }
        }
        throw new AssertionError("the demo world has no sheet among the transfers of " + animals);
    }

    @Test
    void whoever_scans_the_code_reads_on_a_phone_which_animal_the_paper_is_about() {
        try (var buyer = Visitor.stranger(Look.PHONE)) {
            buyer.open(page);

            assertThat(buyer.page.locator("body").innerText()).contains(number);
        }
    }

    @Test
    void the_page_does_without_script() {
        try (var buyer = Visitor.stranger(Look.PHONE.withoutScript())) {
            buyer.open(page);

            assertThat(buyer.page.locator("body").innerText()).contains(number);
        }
    }

    @Test
    void everybody_can_read_it_in_light_and_dark() {
        for (var colours : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            try (var buyer = Visitor.stranger(colours == ColorScheme.DARK ? Look.PHONE.dark() : Look.PHONE)) {
                buyer.open(page);

                assertThat(Accessibility.faults(buyer.page)).isEmpty();
            }
        }
    }

    @Test
    void it_fits_the_narrowest_and_the_widest_window() {
        try (var buyer = Visitor.stranger(Look.DESK)) {
            buyer.open(page);

            assertThat(Fit.faults(buyer.page)).isEmpty();
        }
    }

    @Test
    void it_is_there_within_two_seconds_where_reception_is_poor() {
        try (var buyer = Visitor.stranger(Look.PHONE)) {
            var measured = new SlowPhone(buyer).open(page);

            assertThat(measured.bytes()).isPositive().isLessThan(20_000);
            assertThat(measured.usableAfter().toMillis()).isBetween(400L, 2_000L);
        }
    }

    @Test
    void a_mistyped_code_is_said_to_be_unknown() {
        try (var buyer = Visitor.stranger(Look.PHONE)) {
            assertThat(buyer.opened(page + "0").status()).isEqualTo(404);
        }
    }
}
