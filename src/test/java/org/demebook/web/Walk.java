package org.demebook.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.RequestOptions;
import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Follows every link to this server, from the first page on, the nearest first. Pages of one shape (the page of an animal, of
 * another animal, …) are the same page with other contents: of each shape as many are visited as the walk is told.
 */
final class Walk {
    static final int MOST_PAGES = 300;
    private static final String LINKS = """
            all => all.map(a => a.getAttribute('href')).filter(address => address)
                .map(address => new URL(address, document.baseURI).href)""";
    private static final String MISSING_TARGETS = """
            all => all.map(a => a.getAttribute('href').slice(1)).filter(id => id && !document.getElementById(id))""";

    // an address with these parts taken for one another is of one shape
    private static final List<Pattern> VARIABLE = List.of(
            Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"), // an id
            Pattern.compile("[A-Z]{2,5}-[A-Z]+-[0-9]+-[0-9A-Z*]"), // a studbook number
            Pattern.compile("(?<=/)[0-9]{4}-[0-9]{2}(-[0-9]{2})?(?=/|$)"), // a day
            Pattern.compile("(?<=/)[0-9]+(?=/|$)"),
            Pattern.compile("(?<=/)[A-Z]{2,5}(?=/|$)")); // a population

    /**
     * @param path with its query
     * @param shape the path with {@code *} for what varies, and the names of its parameters
     * @param from the page whose link led here
     * @param first whether it is the first of its shape
     */
    record Visited(String path, String shape, String from, boolean first) {}

    private final Visitor visitor;
    private final int eachShape;
    private final Map<String, Integer> seenOfShape = new HashMap<>();
    private final Set<String> known = new HashSet<>();
    private final ArrayDeque<Visited> ahead = new ArrayDeque<>();
    private final List<Visited> pages = new ArrayList<>();
    private final List<String> faults = new ArrayList<>();

    /** @param eachShape how many pages of one shape are visited */
    Walk(Visitor visitor, int eachShape) {
        this.visitor = visitor;
        this.eachShape = eachShape;
    }

    /** Walks; each page is open in the visitor's browser while {@code look} is asked about it. */
    Walk from(String start, Consumer<Visited> look) {
        meet(visitor.server.address().resolve(start), "");
        while (!ahead.isEmpty() && pages.size() < MOST_PAGES) {
            var next = ahead.poll();
            if (arrivedAt(next)) {
                pages.add(next);
                gather(next);
                look.accept(next);
            }
        }
        return this;
    }

    /** The pages visited, in that order; files that links lead to are fetched and not listed. */
    List<Visited> pages() {
        return pages;
    }

    /** What is wrong with links: one line for each. */
    List<String> faults() {
        return faults;
    }

    /** Whether the address leads to a page of this server; a file for a program is only fetched. */
    private boolean arrivedAt(Visited next) {
        var answer = visitor.context
                .request()
                .get(
                        visitor.server.address().resolve(next.path).toString(),
                        RequestOptions.create().setHeader("Accept", "text/html,*/*;q=0.8"));
        if (answer.status() != 200) {
            faults.add("%s, linked from %s, answers %d".formatted(next.path, next.from, answer.status()));
            return false;
        }
        boolean file = answer.headers().containsKey("content-disposition")
                || !answer.headers().getOrDefault("content-type", "").startsWith("text/html");
        if (!file) {
            visitor.open(next.path);
        }
        return !file;
    }

    private void gather(Visited here) {
        for (var link : (List<?>) visitor.page.locator("a").evaluateAll(LINKS)) {
            meet(URI.create((String) link), here.path);
        }
        for (var id : (List<?>) visitor.page.locator("a[href^='#']").evaluateAll(MISSING_TARGETS)) {
            faults.add("%s links to #%s, and nothing there has this id".formatted(here.path, id));
        }
        if (visitor.page.locator("h1").count() != 1) {
            faults.add("%s has %d headings of the first order"
                    .formatted(here.path, visitor.page.locator("h1").count()));
        }
        if (visitor.page.title().isBlank()) {
            faults.add(here.path + " has no title");
        }
    }

    private void meet(URI link, String from) {
        if (!visitor.server.address().getAuthority().equals(link.getAuthority())) {
            return;
        }
        var path = link.getRawPath() + (link.getRawQuery() == null ? "" : "?" + link.getRawQuery());
        var shape = shape(link);
        boolean leaves = link.getPath().equals("/sign-out");
        if (leaves || !known.add(path)) {
            return;
        }
        int ofShape = seenOfShape.merge(shape, 1, Integer::sum);
        if (ofShape <= eachShape) {
            ahead.add(new Visited(path, shape, from, ofShape == 1));
        }
    }

    static String shape(URI link) {
        var path = link.getPath();
        for (var part : VARIABLE) {
            path = part.matcher(path).replaceAll("*");
        }
        var query = link.getRawQuery();
        if (query == null || query.isEmpty()) {
            return path;
        }
        return path + "?"
                + Stream.of(query.split("&"))
                        .map(parameter -> parameter.split("=", 2)[0])
                        .distinct()
                        .sorted()
                        .collect(Collectors.joining("&"));
    }

    /** The visitor's page, for who looks at it. */
    Page page() {
        return visitor.page;
    }
}
