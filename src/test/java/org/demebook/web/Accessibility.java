package org.demebook.web;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import java.util.stream.Stream;

/**
 * What axe-core finds on a page: all its rules for WCAG 2.0 to 2.2, levels A and AA, and its best practices. It finds perhaps
 * half of what is wrong with a page; no finding does not prove that everybody can use it.
 */
final class Accessibility {
    private static final List<String> TAGS =
            List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice");
    private static final List<String> COLOUR_RULES = List.of("color-contrast", "link-in-text-block");

    private Accessibility() {}

    /** One line for each element that breaks a rule; takes about a second. */
    static List<String> faults(Page page) {
        return lines(page, new AxeBuilder(page).setLegacyMode(true).withTags(TAGS));
    }

    /** The same in both appearances: in the dark one again what depends on colours, as all else is the same page. */
    static List<String> faultsInBothAppearances(Page page) {
        var light = faults(page);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        var dark = lines(page, new AxeBuilder(page).setLegacyMode(true).withRules(COLOUR_RULES));
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        return Stream.concat(light.stream(), dark.stream().map("dark: "::concat))
                .toList();
    }

    private static List<String> lines(Page page, AxeBuilder axe) {
        return axe.analyze().getViolations().stream()
                .flatMap(rule -> lines(page, rule))
                .toList();
    }

    private static Stream<String> lines(Page page, Rule rule) {
        return rule.getNodes().stream().map(node -> "%s: %s (%s): %s %s"
                .formatted(page.url(), rule.getId(), rule.getHelp(), node.getTarget(), node.getHtml()));
    }
}
