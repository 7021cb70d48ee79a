package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.AriaRole;
import java.util.Map;
import java.util.Objects;

/**
 * Somebody at a browser of their own: a keeper of the demo world, or a stranger. Whoever leaves ({@link #close}) fails the
 * test if anything happened on the way that {@link Watch} forbids.
 */
final class Visitor implements AutoCloseable {
    private static final double PATIENCE_MILLIS = 15_000;

    final DemoServer server;
    final BrowserContext context;
    final Page page;
    final Look look;
    private final Watch watch;

    private Visitor(DemoServer server, Look look) {
        this.server = server;
        this.look = look;
        this.context =
                Chromium.browser().newContext(look.options(server.address().toString()));
        this.watch = new Watch(context, server.address());
        context.setDefaultTimeout(PATIENCE_MILLIS);
        this.page = context.newPage();
    }

    /** Somebody whom the server does not know. */
    static Visitor stranger(Look look) {
        return stranger(DemoServer.shared(), look);
    }

    static Visitor stranger(DemoServer server, Look look) {
        return new Visitor(server, look);
    }

    /** One of the demo's keepers (wren, who coordinates; ines, dov, oyelaran), signed in. */
    static Visitor keeper(String name, Look look) {
        return keeper(DemoServer.shared(), name, look);
    }

    static Visitor keeper(DemoServer server, String name, Look look) {
        var visitor = new Visitor(server, look);
        visitor.context.setExtraHTTPHeaders(Map.of("Authorization", "Bearer " + server.token(name)));
        return visitor;
    }

    /** Opens a page of this server; fails if it is not there. */
    Response open(String path) {
        var response = opened(path);
        assertThat(response.status()).as("GET %s", path).isEqualTo(200);
        return response;
    }

    /** Opens a page of this server, whatever it answers. */
    Response opened(String path) {
        return Objects.requireNonNull(
                page.navigate(server.address().resolve(path).toString()), path);
    }

    /** With a finger on a phone, with the mouse elsewhere. */
    void press(Locator what) {
        if (look.touch()) {
            what.tap();
        } else {
            what.click();
        }
    }

    void pressButton(String name) {
        press(page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name)));
    }

    void follow(String link) {
        press(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(link)));
    }

    /** The page that is open, without the server's part of its address. */
    String where() {
        return server.address().relativize(java.net.URI.create(page.url())).toString();
    }

    /** Says that a trouble, or part of its text as a regular expression, is what this test brings about. */
    Visitor expecting(String trouble) {
        watch.expect(trouble);
        return this;
    }

    Watch watch() {
        return watch;
    }

    /** No reception: nothing reaches the server until it is back. */
    void loseReception() {
        watch.expect("net::ERR_INTERNET_DISCONNECTED");
        context.setOffline(true);
    }

    void getReceptionBack() {
        context.setOffline(false);
    }

    @Override
    public void close() {
        page.evaluate("0"); // whatever the browser still had to tell has been told when this is answered
        var troubles = watch.troubles();
        context.close();
        assertThat(troubles).as("what happened while somebody was there").isEmpty();
    }
}
