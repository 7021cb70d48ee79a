package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the browser tests stand on sees the faults that it is there for: each is planted on a page of its own. */
class GroundIT {
    private static final String STRICT = "default-src 'self'; frame-ancestors 'none'";
    private static final String PAGE =
            "<!DOCTYPE html><html lang=en><head><meta charset=utf-8><title>Planted</title>%s</head><body><main><h1>Planted</h1>%s</main></body></html>";

    private HttpServer planted;

    private Visitor at(Look look, String head, String body, String policy) throws IOException {
        return at(look, Map.of("/planted", PAGE.formatted(head, body)), policy);
    }

    private Visitor at(Look look, Map<String, String> pages, String policy) throws IOException {
        planted = HttpServer.create(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0), 0);
        planted.createContext("/", exchange -> answer(exchange, pages, policy));
        planted.start();
        var address = URI.create("http://127.0.0.1:" + planted.getAddress().getPort());
        var visitor = Visitor.stranger(address, look);
        visitor.opened("/planted");
        return visitor;
    }

    private static void answer(HttpExchange exchange, Map<String, String> pages, String policy) throws IOException {
        exchange.getRequestBody().readAllBytes();
        var page = pages.get(exchange.getRequestURI().getPath());
        var bytes = (page == null ? "gone" : page).getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", page == null ? "text/plain" : "text/html;charset=utf-8");
        if (!policy.isEmpty()) {
            exchange.getResponseHeaders().set("Content-Security-Policy", policy);
        }
        exchange.sendResponseHeaders(page == null ? 404 : page.contains(" data-refused") ? 422 : 200, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }

    @AfterEach
    void uproot() {
        if (planted != null) {
            planted.stop(0);
        }
    }

    private List<String> troublesWith(String head, String body, String policy) throws IOException {
        var visitor = at(Look.DESK, head, body, policy);
        visitor.page.waitForLoadState();
        assertThatThrownBy(visitor::close).isInstanceOf(AssertionError.class);
        return visitor.watch().troubles();
    }

    @Test
    void a_page_without_fault_passes() throws Exception {
        try (var visitor = at(Look.DESK, "", "<p>Nothing is wrong here.</p>", STRICT)) {
            assertThat(Accessibility.faultsInBothAppearances(visitor.page)).isEmpty();
            assertThat(Fit.faults(visitor.page)).isEmpty();
        }
    }

    @Test
    void a_page_without_a_policy_is_caught() throws Exception {
        assertThat(troublesWith("", "", "")).singleElement().asString().contains("no content security policy");
    }

    @Test
    void a_lax_policy_is_caught() throws Exception {
        assertThat(troublesWith("", "", "default-src 'self' 'unsafe-inline'"))
                .singleElement()
                .asString()
                .contains("lax");
    }

    @Test
    void a_style_in_the_page_is_caught() throws Exception {
        assertThat(troublesWith("", "<p style='color: red'>inline</p>", STRICT))
                .singleElement()
                .asString()
                .contains("Content Security Policy");
    }

    @Test
    void a_script_that_fails_is_caught() throws Exception {
        assertThat(troublesWith("<script>throw new Error('planted')</script>", "", "script-src 'sha256-x' 'nonce-a'"))
                .isNotEmpty();
    }

    @Test
    void a_part_that_is_missing_is_caught() throws Exception {
        assertThat(troublesWith("<script src=/gone.js></script>", "", STRICT))
                .singleElement()
                .asString()
                .contains("/gone.js")
                .contains("404");
    }

    @Test
    void a_request_to_another_host_is_caught() throws Exception {
        assertThat(troublesWith("", "<img alt='' src='http://192.0.2.1/pixel.png'>", "img-src http://192.0.2.1"))
                .anySatisfy(trouble -> assertThat(trouble).contains("another host"));
    }

    @Test
    void an_element_that_breaks_a_rule_of_accessibility_is_named_with_page_and_rule() throws Exception {
        try (var visitor = at(Look.DESK, "", "<img src='/planted'>", STRICT).expecting(".*")) {
            assertThat(Accessibility.faults(visitor.page))
                    .singleElement()
                    .asString()
                    .contains("/planted", "image-alt", "<img");
        }
    }

    @Test
    void small_targets_count_as_faults_too() throws Exception {
        var body = "<nav aria-label=n><a href=/a>a</a><br><button type=button>x</button></nav>";
        try (var visitor = at(Look.DESK, "", body, STRICT)) {
            assertThat(Fit.faults(visitor.page)).hasSize(2).allMatch(fault -> fault.contains("too small"));
        }
    }

    @Test
    void what_is_too_pale_in_the_dark_alone_is_found() throws Exception {
        var css =
                "@media (prefers-color-scheme: dark) { body { background: #222 } p { color: #333 } h1 { color: #fff } }";
        try (var visitor = at(Look.DESK, "<style nonce=n>" + css + "</style>", "<p>pale</p>", "style-src 'nonce-n'")) {
            assertThat(Accessibility.faultsInBothAppearances(visitor.page))
                    .singleElement()
                    .asString()
                    .startsWith("dark: ")
                    .contains("color-contrast");
        }
    }

    @Test
    void a_page_that_scrolls_sideways_is_found() throws Exception {
        try (var visitor = at(Look.DESK, "", "<p>" + "W".repeat(60) + "</p>", STRICT)) {
            assertThat(Fit.faults(visitor.page)).isNotEmpty().allMatch(fault -> fault.contains("320 px wide"));
        }
    }

    @Test
    void the_phones_look_and_language_reach_the_page() throws Exception {
        try (var visitor = at(Look.PHONE.dark().in("de-DE"), "", "", STRICT)) {
            assertThat(
                            visitor.page.evaluate(
                                    "[innerWidth, matchMedia('(prefers-color-scheme: dark)').matches, matchMedia('(pointer: coarse)').matches, navigator.language]"))
                    .isEqualTo(List.of(980, true, true, "de-DE")); // 980: the page has no viewport of its own
        }
    }

    @Test
    void a_slow_phone_waits_for_what_comes_over_the_wire() throws Exception {
        var page = PAGE.formatted("", "x".repeat(100_000)); // takes 2 s at 400 kbit/s
        try (var visitor = at(Look.PHONE, Map.of("/planted", page), STRICT)) {
            var measured = new SlowPhone(visitor).open("/planted");

            assertThat(measured.bytes()).isBetween(100_000L, 102_000L);
            assertThat(measured.usableAfter().toMillis()).isBetween(2_000L, 6_000L);
        }
    }

    @Test
    void a_walk_visits_each_shape_once_and_tells_of_links_that_lead_nowhere() throws Exception {
        var links = "<a href=/animals/MC-H-1-A>one</a> <a href=/animals/MC-H-2-B>two</a> <a href=/gone>gone</a>"
                + " <a href=#nowhere>nowhere</a> <a href=/sign-out>out</a> <a href=http://192.0.2.1/>elsewhere</a>";
        var animal = PAGE.formatted("", "<a href=/planted>back</a>");
        var pages = Map.of("/planted", PAGE.formatted("", links), "/animals/MC-H-1-A", animal);
        try (var visitor = at(Look.DESK, pages, STRICT)) {
            var walk = new Walk(visitor, 1).from("/planted", page -> {});

            assertThat(walk.pages()).extracting(Walk.Visited::path).containsExactly("/planted", "/animals/MC-H-1-A");
            assertThat(walk.faults())
                    .hasSize(2)
                    .anyMatch(fault -> fault.contains("/gone, linked from /planted, answers 404"))
                    .anyMatch(fault -> fault.contains("#nowhere"));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "/populations/MC/animals/MC-H-27-K, /populations/*/animals/*",
        "/plans/01a222fc-f75c-70e5-a191-c5f3ba0751f0?b=1&a=2&a=3, /plans/*?a&b",
        "/days/2026-11-28, /days/*"
    })
    void addresses_of_one_shape(String path, String shape) {
        assertThat(Walk.shape(URI.create("http://127.0.0.1" + path))).isEqualTo(shape);
    }

    @Test
    void a_form_sent_empty_must_come_back_and_say_why() throws Exception {
        var form =
                "<form method=post action=/%s><label>a <input name=a value=filled required></label><button>Send</button></form>";
        var refused = PAGE.replace("lang=en", "lang=en data-refused");
        var pages = Map.of(
                "/planted",
                        PAGE.formatted("", form.formatted("well") + form.formatted("silent") + form.formatted("blank")),
                "/well", refused.formatted("", "<p class=problems role=alert>Say a.</p>" + form.formatted("well")),
                "/silent", refused.formatted("", "<p>Hm.</p>"),
                "/blank", "");
        try (var visitor = at(Look.DESK, pages, STRICT)) {
            var forms = new EmptyForms(visitor);
            forms.sendAll("/planted");

            assertThat(forms.sent()).hasSize(3);
            assertThat(forms.faults())
                    .hasSize(3)
                    .anyMatch(fault -> fault.contains("/silent") && fault.contains("the form is gone"))
                    .anyMatch(fault -> fault.contains("/silent") && fault.contains("nothing says why"))
                    .anyMatch(fault -> fault.contains("/blank") && fault.contains("no page of ours"));
        }
    }

    @Test
    void a_picture_of_many_colours_keeps_its_look_in_few() throws Exception {
        var random = new Random(4711);
        var picture = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 300; x++) {
            for (int y = 0; y < 200; y++) {
                picture.setRGB(x, y, new Color(x * 255 / 300, y * 255 / 200, random.nextInt(20)).getRGB());
            }
        }
        var png = new ByteArrayOutputStream();
        ImageIO.write(picture, "png", png);

        var small = Pictures.small(png.toByteArray());

        assertThat(small.length).isLessThan(png.size());
        var seen = ImageIO.read(new ByteArrayInputStream(small));
        for (int x = 0; x < 300; x += 7) {
            for (int y = 0; y < 200; y += 7) {
                var was = new Color(picture.getRGB(x, y));
                var is = new Color(seen.getRGB(x, y));
                assertThat(Math.abs(was.getRed() - is.getRed())
                                + Math.abs(was.getGreen() - is.getGreen())
                                + Math.abs(was.getBlue() - is.getBlue()))
                        .isLessThan(48);
            }
        }
    }
}
