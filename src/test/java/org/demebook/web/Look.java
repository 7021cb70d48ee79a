package org.demebook.web;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import com.microsoft.playwright.options.ServiceWorkerPolicy;

/**
 * With what somebody looks at the pages.
 *
 * @param width of the window in CSS pixels
 * @param touch a phone: fingers, no mouse, the page's own viewport
 * @param colours what the device prefers
 * @param language of the browser, as in BCP 47
 * @param script whether scripts run
 */
public record Look(int width, int height, boolean touch, ColorScheme colours, String language, boolean script) {
    /** A phone in the hand. */
    public static final Look PHONE = new Look(390, 844, true, ColorScheme.LIGHT, "en-GB", true);

    /** A window on a table. */
    public static final Look DESK = new Look(1280, 900, false, ColorScheme.LIGHT, "en-GB", true);

    public Look dark() {
        return new Look(width, height, touch, ColorScheme.DARK, language, script);
    }

    public Look in(String otherLanguage) {
        return new Look(width, height, touch, colours, otherLanguage, script);
    }

    public Look withoutScript() {
        return new Look(width, height, touch, colours, language, false);
    }

    NewContextOptions options(String server) {
        return new NewContextOptions()
                .setBaseURL(server)
                .setViewportSize(width, height)
                .setHasTouch(touch)
                .setIsMobile(touch)
                .setColorScheme(colours)
                .setReducedMotion(ReducedMotion.REDUCE)
                .setLocale(language)
                .setTimezoneId("Europe/London")
                .setJavaScriptEnabled(script)
                .setServiceWorkers(script ? ServiceWorkerPolicy.ALLOW : ServiceWorkerPolicy.BLOCK);
    }

    /** "phone", "desk-dark" … */
    @Override
    public String toString() {
        return (touch ? "phone" : "desk") + (colours == ColorScheme.DARK ? "-dark" : "");
    }
}
