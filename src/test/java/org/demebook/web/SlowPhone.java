package org.demebook.web;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import java.time.Duration;

/**
 * A phone with poor reception: every request waits 400 ms, and 400 kbit pass in a second, in either direction. The browser
 * simulates it behind its cache, so that what it kept costs nothing. (A service worker's own requests would not be slowed:
 * where one answers, this is not measured.)
 */
final class SlowPhone {
    private static final int LATENCY_MILLIS = 400;
    private static final int BYTES_PER_SECOND = 400_000 / 8;

    // DOMContentLoaded and the first picture of the page, whichever was later, since the visitor asked for the page
    private static final String USABLE = """
            () => new Promise(told => {
                const done = () => {
                    const way = performance.getEntriesByType('navigation')[0];
                    const paint = performance.getEntriesByName('first-contentful-paint')[0];
                    if (way.domContentLoadedEventEnd > 0 && paint)
                        told(Math.max(way.domContentLoadedEventEnd, paint.startTime));
                    else
                        setTimeout(done, 20);
                };
                done();
            })""";

    /** @param bytes over the wire, headers and compression counted as they are */
    record Measured(String page, Duration usableAfter, long bytes) {}

    private final Visitor visitor;
    private final CDPSession session;
    private long bytes;

    SlowPhone(Visitor visitor) {
        this.visitor = visitor;
        this.session = visitor.context.newCDPSession(visitor.page);
        visitor.bypassWorker(); // what it fetches is not slowed down, and what it keeps is not fetched
        session.send("Network.enable");
        session.on(
                "Network.loadingFinished",
                event -> bytes += event.get("encodedDataLength").getAsLong());
        var conditions = new JsonObject();
        conditions.addProperty("offline", false);
        conditions.addProperty("latency", LATENCY_MILLIS);
        conditions.addProperty("downloadThroughput", BYTES_PER_SECOND);
        conditions.addProperty("uploadThroughput", BYTES_PER_SECOND);
        session.send("Network.emulateNetworkConditions", conditions);
    }

    Measured open(String path) {
        bytes = 0;
        visitor.page.navigate(
                visitor.server.address().resolve(path).toString(),
                new Page.NavigateOptions().setWaitUntil(com.microsoft.playwright.options.WaitUntilState.NETWORKIDLE));
        var millis = ((Number) visitor.page.evaluate(USABLE)).doubleValue();
        return new Measured(path, Duration.ofMillis(Math.round(millis)), bytes);
    }
}
