package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A list comes in, and so does a keeper. On a server of its own: both stay. */
class SheetsIT {
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
    void a_sheet_with_a_wrong_cell_is_mended_in_place_and_imported(Look look) {
        var mark = look + (look.script() ? "" : "-plain");
        var sheet = "id,sex,born\r\nThrift %s,f,2019\r\nSedge %s,mail,2019-06-31\r\n".formatted(mark, mark);
        try (var dov = Visitor.keeper(server, "dov", look).expecting("422")) {
            dov.open(MC + "/sheets");
            dov.page
                    .locator("[name=file]")
                    .setInputFiles(new FilePayload("list.csv", "text/csv", sheet.getBytes(StandardCharsets.UTF_8)));
            dov.pressButton("Check");

            assertThat(dov.page.locator("[name='cell.3.1']")).hasValue("mail");
            if (look.script()) {
                assertThat(Accessibility.faultsInBothAppearances(dov.page)).isEmpty();
                assertThat(Fit.faults(dov.page)).isEmpty();
            }
            dov.page.locator("[name='cell.3.1']").fill("m");
            dov.pressButton("Check again");
            assertThat(dov.page.locator("[name='cell.3.1']")).hasCount(0);
            dov.page.locator("[name='cell.3.2']").fill("2019-06-30");
            dov.pressButton("Check again");

            dov.pressButton("Import 2 animals");
            dov.page.waitForURL("**/imports/*");
            for (int i = 0; i < 50 && dov.page.locator("[hx-trigger]").count() > 0; i++) {
                dov.page.waitForTimeout(200);
                if (!look.script()) {
                    dov.page.reload();
                }
            }
            assertThat(dov.page.locator("main")).containsText("2 animals are registered.");
        }
        var known = server.as("dov").get("/api/v1" + MC + "/export").asString();
        assertThat(known).contains("Thrift " + mark, "Sedge " + mark, "2019-06-30");
    }

    @ParameterizedTest
    @MethodSource("looks")
    void who_is_invited_opens_an_account_by_the_link_and_appears_among_the_members(Look look) {
        var name = "sol-" + look + (look.script() ? "" : "-plain");
        try (var wren = Visitor.keeper(server, "wren", look);
                var sol = Visitor.stranger(server.address(), look).expecting("422")) {
            wren.open(MC + "/members");
            wren.pressButton("Make a link");
            var link = wren.page.locator("#link").inputValue();
            if (look.script()) {
                assertThat(Accessibility.faultsInBothAppearances(wren.page)).isEmpty();
                assertThat(Fit.faults(wren.page)).isEmpty();
            }

            sol.open(link.substring(link.indexOf("/invitations/")));
            sol.page.locator("[name=name]").fill(name);
            sol.page.locator("[name=fullName]").fill("Sol Fenwick");
            sol.page.locator("[name=password]").fill("short");
            sol.pressButton("Open my account");
            assertThat(sol.page.locator(".problems")).isVisible();
            assertThat(sol.page.locator("[name=fullName]")).hasValue("Sol Fenwick");
            sol.page.locator("[name=password]").fill("nine tame sea grapes");
            sol.pressButton("Open my account");
            sol.page.waitForURL("**" + MC + "/members");
            assertThat(sol.page.locator("details.who summary")).hasText(name);

            wren.follow("Done");
            assertThat(wren.page.locator("main")).containsText(name);
        }
    }
}
