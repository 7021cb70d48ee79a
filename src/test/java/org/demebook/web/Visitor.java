package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.LoadState;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Somebody at a browser of their own: a keeper of the demo world, or a stranger. Whoever leaves ({@link #close}) fails the
 * test if anything happened on the way that {@link Watch} forbids.
 */
public final class Visitor implements AutoCloseable {
    private static final double PATIENCE_MILLIS = 15_000;
    private static final int ASKED_AT_MOST = 3;

    private static final Map<String, List<Cookie>> SESSIONS = new HashMap<>();

    final DemoServer server;
    final BrowserContext context;
    public final Page page;
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
        return new Visitor(DemoServer.shared(), look);
    }

    /** Somebody who visits another server than the demo's. */
    public static Visitor stranger(URI server, Look look) {
        return new Visitor(DemoServer.at(server), look);
    }

    /** One of the demo's keepers (wren, who coordinates; ines, dov, oyelaran), signed in. */
    static Visitor keeper(String name, Look look) {
        return keeper(DemoServer.shared(), name, look);
    }

    static Visitor keeper(DemoServer server, String name, Look look) {
        return signedIn(server, name, DemoServer.password(), look);
    }

    /** Who looks after the node of a server that the tests started. */
    static Visitor administrator(DemoServer server, Look look) {
        return signedIn(server, DemoServer.ADMINISTRATOR, DemoServer.ADMINISTRATOR_PASSWORD, look);
    }

    /** With the cookie of a sign-in that was made before, if one was: a session lives longer than these tests. */
    private static Visitor signedIn(DemoServer server, String name, String password, Look look) {
        var visitor = new Visitor(server, look);
        var kept = SESSIONS.get(server.address() + " " + name);
        if (kept == null) {
            visitor.signIn(name, password);
            SESSIONS.put(server.address() + " " + name, visitor.context.cookies());
        } else {
            visitor.context.addCookies(kept);
        }
        return visitor;
    }

    /** At the page for it; goes on to where the page leads. */
    void signIn(String name, String password) {
        open("/sign-in");
        page.locator("[name=name]").fill(name);
        page.locator("[name=password]").fill(password);
        press(page.locator("form:has([name=password]) button"));
        page.waitForURL(address -> !URI.create(address).getPath().equals("/sign-in"));
    }

    /** Opens a page of this server; fails if it is not there. */
    public Response open(String path) {
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
    public void press(Locator what) {
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
        return server.address().relativize(URI.create(page.url())).toString();
    }

    /** Says that a trouble, or part of its text as a regular expression, is what this test brings about. */
    public Visitor expecting(String trouble) {
        watch.expect(trouble);
        return this;
    }

    Watch watch() {
        return watch;
    }

    /** From now on every request goes to the server: nothing is answered out of what the device keeps. */
    void bypassWorker() {
        var session = context.newCDPSession(page);
        var bypass = new JsonObject();
        bypass.addProperty("bypass", true);
        session.send("Network.enable");
        session.send("Network.setBypassServiceWorker", bypass);
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
        hearAll();
        var troubles = watch.troubles();
        context.close();
        assertThat(troubles).as("what happened while somebody was there").isEmpty();
    }

    /** Whatever the browser still had to tell has been told when the page answers. */
    private void hearAll() {
        for (int i = 0; i < ASKED_AT_MOST; i++) {
            try {
                page.waitForLoadState(LoadState.DOMCONTENTLOADED);
                page.evaluate("0");
                return;
            } catch (PlaywrightException onTheWayToAnotherPage) {
                // asked again there
            }
        }
    }
}
