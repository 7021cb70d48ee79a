package org.demebook.web;

import static io.restassured.RestAssured.given;

import io.quarkus.test.common.http.TestHTTPResourceManager;
import io.restassured.specification.RequestSpecification;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.Colony;

/** Requests as a browser without script sends them: for pages, by cookie, from forms of this server; it follows no redirect. */
public final class Browsing {
    private static final AtomicInteger ADDRESSES = new AtomicInteger();

    private Browsing() {}

    /** A browser that a keeper of {@link Colony} is signed in with. */
    public static RequestSpecification as(String keeper) {
        return anonymous().cookie("demebook-session", Colony.token(keeper));
    }

    /** A browser that nobody is signed in with, at an address that nobody used before. */
    public static RequestSpecification anonymous() {
        return ofAnotherSite().header("Origin", own());
    }

    /** A browser that does not say whose page a form stands on. */
    static RequestSpecification ofAnotherSite() {
        int n = ADDRESSES.incrementAndGet();
        return given().baseUri(own())
                .header("X-Forwarded-For", "11.%d.%d.%d".formatted(n >> 16 & 255, n >> 8 & 255, n & 255))
                .accept("text/html,application/xhtml+xml,*/*;q=0.8")
                .redirects()
                .follow(false);
    }

    static String own() {
        return TestHTTPResourceManager.getUri();
    }
}
