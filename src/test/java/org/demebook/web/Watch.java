package org.demebook.web;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What must not happen on any page while somebody is on it: an error in the console (so the browser reports what the content
 * security policy stopped, too), a request to another host, a page without a strict policy, a script or picture that is not
 * there, an answer in the five hundreds.
 */
final class Watch {
    private static final Set<String> PARTS = Set.of("stylesheet", "script", "image", "font", "manifest", "media");
    private static final Set<String> FETCHED_FROM_NOWHERE = Set.of("data", "blob", "about");
    private static final Pattern LAX = Pattern.compile("'unsafe-inline'|'unsafe-eval'|(?<![\\w:/.])\\*");
    // the browser repeats what the answer's status said already, which is looked at in onResponse
    private static final Pattern SAID_BY_STATUS =
            Pattern.compile("Failed to load resource: the server responded with a status of [45]\\d\\d.*");

    private final URI server;
    private final Set<String> troubles = new LinkedHashSet<>();
    private final List<Pattern> expected = new ArrayList<>();

    Watch(BrowserContext context, URI server) {
        this.server = server;
        context.onConsoleMessage(this::onConsole);
        context.onWebError(error -> troubles.add("a script failed: " + error.error()));
        context.onRequest(this::onRequest);
        context.onResponse(this::onResponse);
    }

    /** What this test brings about on purpose. */
    void expect(String pattern) {
        expected.add(Pattern.compile(pattern, Pattern.DOTALL));
    }

    private void onConsole(ConsoleMessage message) {
        boolean trouble = message.type().equals("error") || message.text().contains("Content Security Policy");
        if (trouble && !SAID_BY_STATUS.matcher(message.text()).matches()) {
            troubles.add("in the console of %s: %s (%s)"
                    .formatted(
                            Optional.ofNullable(message.page())
                                    .map(page -> page.url())
                                    .orElse("?"),
                            message.text(),
                            message.location()));
        }
    }

    private void onRequest(Request request) {
        var address = URI.create(request.url().replaceAll("[^\\x21-\\x7e]|[\\[\\]{}|\\\\^`<>\"]", "_"));
        boolean ours = server.getAuthority().equals(address.getAuthority());
        if (!ours && !FETCHED_FROM_NOWHERE.contains(address.getScheme())) {
            troubles.add("a request to another host: %s %s".formatted(request.method(), request.url()));
        }
    }

    private void onResponse(Response response) {
        var request = response.request();
        if (response.status() >= 500 || response.status() >= 400 && PARTS.contains(request.resourceType())) {
            troubles.add("%s %s answered %d".formatted(request.method(), request.url(), response.status()));
        }
        var headers = response.headers();
        if (request.resourceType().equals("document")
                && headers.getOrDefault("content-type", "").startsWith("text/html")) {
            var policy = headers.get("content-security-policy");
            if (policy == null) {
                troubles.add("%s has no content security policy".formatted(request.url()));
            } else if (LAX.matcher(policy).find()) {
                troubles.add("%s has a lax content security policy: %s".formatted(request.url(), policy));
            }
        }
    }

    /** All that happened so far and was not expected. */
    List<String> troubles() {
        return troubles.stream()
                .filter(trouble -> expected.stream()
                        .noneMatch(pattern -> pattern.matcher(trouble).find()))
                .toList();
    }
}
