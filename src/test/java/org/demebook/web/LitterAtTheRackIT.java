package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One of the weekly jobs: a litter is entered where it is found, with reception or without. Each test has a female of its own. */
class LitterAtTheRackIT {
    private static final String TS = "/populations/TS";
    private static final String KEPT = """
            async () => {
              return (await (await caches.open('demebook-pages')).keys()).length >= 3;
            }""";

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK);
    }

    /** Somebody who signed in by the page, and whose device keeps what is needed without reception. */
    private static Visitor atTheRack(Look look) {
        var visitor = Visitor.stranger(look);
        visitor.signIn("wren", DemoServer.password());
        visitor.open(TS + "/litters/new");
        awaitKept(visitor);
        return visitor;
    }

    private static void awaitKept(Visitor visitor) {
        for (int i = 0; i < 100 && !(Boolean) visitor.page.evaluate(KEPT); i++) {
            visitor.page.waitForTimeout(100);
        }
        assertThat((Boolean) visitor.page.evaluate(KEPT))
                .as("the device keeps the pages")
                .isTrue();
    }

    private static String female() {
        return DemoServer.shared()
                .as("wren")
                .body(Map.of("sex", "female", "born", "2020-06-01", "origin", "unknown"))
                .post("/api/v1" + TS + "/animals")
                .then()
                .statusCode(201)
                .extract()
                .path("animal.number");
    }

    private static List<Map<String, Object>> littersOf(String dam) {
        return DemoServer.shared()
                .as("wren")
                .get("/api/v1" + TS + "/litters?dam=" + dam)
                .path("items");
    }

    private static void count(Visitor visitor, String name, int times) {
        var more = visitor.page.locator(".count:has([name='%s']) [data-step='1']".formatted(name));
        for (int i = 0; i < times; i++) {
            visitor.press(more);
        }
    }

    private static Locator register(Visitor visitor) {
        return visitor.page.locator("#litter-entry button.primary");
    }

    @ParameterizedTest
    @MethodSource("looks")
    void with_reception_it_is_counted_with_one_thumb_and_gets_its_numbers(Look look) {
        var dam = female();
        try (var visitor = atTheRack(look)) {
            visitor.open(TS + "/litters/new?dam=" + dam);
            count(visitor, "ovaFound", 5);
            count(visitor, "liveBorn", 3);
            assertThat(visitor.page.locator("[data-tie]")).hasText("2 still to sort");
            visitor.press(register(visitor));
            assertThat(visitor.page.locator("[data-tie]")).hasText("2 missing: which?");
            count(visitor, "unfertilised", 2);
            assertThat(visitor.page.locator("[data-tie]")).hasText("It adds up: 5");

            visitor.press(register(visitor));

            visitor.page.waitForURL(Pattern.compile(".*/litters/[0-9a-f-]{36}"));
            assertThat(littersOf(dam)).hasSize(1);
            assertThat(visitor.page.locator("h1")).containsText(dam);
            assertThat(visitor.page.locator("#unsent")).isHidden();
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void without_reception_it_stays_on_the_device_and_is_sent_once_when_it_is_back(Look look) {
        var dam = female();
        try (var visitor = atTheRack(look)) {
            visitor.open(TS + "/litters/new"); // the device keeps the page with the new female in it
            awaitKept(visitor);
            visitor.loseReception();
            visitor.open(TS + "/litters/new?dam=" + dam);
            count(visitor, "ovaFound", 4);
            count(visitor, "liveBorn", 3);
            visitor.page.waitForTimeout(600); // it is kept a moment after the last tap

            visitor.page.reload();
            assertThat(visitor.page.locator("#restored")).isVisible();
            assertThat(visitor.page.locator("[name=liveBorn]")).hasValue("3");
            assertThat(visitor.page.locator("[name=otherDam]")).hasValue(dam);
            count(visitor, "unfertilised", 1);
            visitor.press(register(visitor));
            assertThat(visitor.page.locator("#unsent")).containsText("1 litter waits on this device");

            visitor.open(TS + "/litters");
            assertThat(visitor.page.locator("#unsent-list")).containsText(dam);
            assertThat(littersOf(dam)).isEmpty();

            visitor.getReceptionBack();
            assertThat(visitor.page.locator("#sent")).isVisible();
            assertThat(visitor.page.locator("#unsent")).isHidden();
            visitor.open(TS + "/litters");
            visitor.open(TS + "/today");
            assertThat(littersOf(dam)).hasSize(1);
            assertThat(littersOf(dam).get(0)).containsEntry("liveBorn", 3).containsEntry("unfertilised", 1);
        }
    }

    @Test
    void what_the_server_does_not_take_comes_back_into_the_form_with_what_is_wrong() {
        var dam = female();
        var today = LocalDate.now().toString();
        try (var visitor = atTheRack(Look.PHONE)) {
            visitor.open(TS + "/litters/new");
            awaitKept(visitor);
            visitor.loseReception();
            visitor.open(TS + "/litters/new?dam=" + dam);
            count(visitor, "ovaFound", 2);
            count(visitor, "liveBorn", 2);
            visitor.press(register(visitor));
            assertThat(visitor.page.locator("#unsent")).isVisible();
            // somebody else of the household was quicker
            DemoServer.shared()
                    .as("wren")
                    .body(Map.of(
                            "dam", dam, "born", today, "liveBorn", 2, "stillborn", 0, "unfertilised", 0, "ovaFound", 2))
                    .post("/api/v1" + TS + "/litters")
                    .then()
                    .statusCode(201);

            visitor.getReceptionBack();
            assertThat(visitor.page.locator("#unsent")).containsText("did not take it");
            visitor.open(TS + "/litters");
            visitor.press(visitor.page.locator("#unsent-list [data-do=open]"));

            assertThat(visitor.page.locator(".problems")).containsText(dam);
            assertThat(visitor.page.locator("[name=liveBorn]")).hasValue("2");
            visitor.open(TS + "/litters");
            visitor.page.onDialog(dialog -> dialog.accept());
            visitor.press(visitor.page.locator("#unsent-list [data-do=drop]"));
            assertThat(visitor.page.locator("#unsent")).isHidden();
            assertThat(littersOf(dam)).hasSize(1);
        }
    }

    @Test
    void another_keeper_on_the_same_device_sees_nothing_of_it() {
        var dam = female();
        try (var visitor = atTheRack(Look.DESK)) {
            visitor.open(TS + "/litters/new?dam=" + dam);
            count(visitor, "ovaFound", 7);
            visitor.page.waitForTimeout(600);
            visitor.open(TS + "/litters");
            assertThat(visitor.page.locator("#unsent-list")).containsText(dam);

            signOut(visitor);
            assertThat((Boolean) visitor.page.evaluate("async () => await caches.has('demebook-pages')"))
                    .as("pages of wren are kept")
                    .isFalse();
            visitor.signIn("ines", DemoServer.password());
            visitor.open(TS + "/litters");
            visitor.page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
            assertThat(visitor.page.locator("#unsent")).isHidden();
            assertThat(visitor.page.content()).doesNotContain(dam);

            signOut(visitor);
            visitor.signIn("wren", DemoServer.password());
            visitor.open(TS + "/litters");
            assertThat(visitor.page.locator("#unsent-list")).containsText(dam);
        }
    }

    private static void signOut(Visitor visitor) {
        visitor.press(visitor.page.locator("details.who summary"));
        visitor.page.waitForNavigation(
                new Page.WaitForNavigationOptions().setUrl("**/"),
                () -> visitor.press(visitor.page.locator("form[action='/sign-out'] button")));
    }
}
