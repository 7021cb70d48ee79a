package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the stylesheet promises to whoever writes a page, and to whoever waits for it on a slow network. */
class StylesheetTest {
    @Test
    void every_class_stands_on_the_page_that_says_when_to_use_it() {
        assertThat(Stylesheet.classes()).hasSizeGreaterThan(40).allSatisfy(name -> assertThat(Stylesheet.page())
                .as("docs/design.md says nothing of .%s", name)
                .containsPattern("[`. ]" + Pattern.quote(name) + "[`. \\[:>]"));
    }

    @Test
    void every_class_of_the_page_has_a_look() {
        var named = Pattern.compile("`[^`\\n]*`").matcher(Stylesheet.page()).results();
        assertThat(named.map(code -> code.group())
                        .flatMap(code -> Pattern.compile("(?<![\\w/])\\.([a-z][a-z-]*)")
                                .matcher(code)
                                .results())
                        .map(name -> name.group(1)))
                .isSubsetOf(Stylesheet.classes());
    }

    @Test
    void it_is_small_and_asks_for_nothing_else() {
        assertThat(Stylesheet.css().getBytes(StandardCharsets.UTF_8).length).isLessThan(30_000);
        assertThat(Stylesheet.css()).doesNotContain("url(", "@import", "@font-face", "http");
    }

    @Test
    void no_colour_stands_outside_the_custom_properties() {
        assertThat(Stylesheet.css().replaceAll("--[a-z0-9-]+:[^;]*;", ""))
                .doesNotContainPattern("#[0-9a-fA-F]{3,8}\\b")
                .doesNotContainPattern("\\b(rgb|hsl|oklch)a?\\(");
    }

    @Test
    void what_is_tapped_is_forty_four_points_high() {
        // WCAG 2.2, 2.5.5 Target Size (Enhanced): 44 CSS pixels; 1rem is 16 of them unless the reader wants more
        assertThat(Stylesheet.css()).contains("--tap: 2.75rem;");
        assertThat(2.75 * 16).isEqualTo(44);
    }
}
