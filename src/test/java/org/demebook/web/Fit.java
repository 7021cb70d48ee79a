package org.demebook.web;

import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;

/** Whether a page fits the hand and the window: nothing to scroll sideways, nothing too small for a thumb. */
final class Fit {
    private static final int NARROWEST = 320;
    private static final int WIDEST = 1600;
    private static final int TAP = 44;

    // what stands in running text may be as small as the text is (WCAG 2.2, 2.5.8, exception "inline")
    private static final String TOO_SMALL = """
            tap => [...document.querySelectorAll('button, select, summary, input:not([type=hidden]), textarea, [role=button], a.button, nav a, label.choice')]
                .filter(e => e.checkVisibility({visibilityProperty: true, opacityProperty: true}))
                .filter(e => !(e.matches('input[type=radio], input[type=checkbox], input[type=file]') && e.closest('label')))
                .map(e => [e, e.getBoundingClientRect()])
                .filter(([e, box]) => box.height > 1 && box.height < tap - 0.5)
                .map(([e, box]) => Math.round(box.width) + ' × ' + Math.round(box.height) + ' px: ' + e.outerHTML.slice(0, 120))""";

    private static final String STICKING_OUT = """
            () => document.scrollingElement.scrollWidth <= document.documentElement.clientWidth ? [] :
                [...document.querySelectorAll('body *')]
                    .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
                    .filter(e => { for (let p = e.parentElement; p && p !== document.body; p = p.parentElement)
                        if (/auto|scroll|hidden|clip/.test(getComputedStyle(p).overflowX)) return false; return true; })
                    .slice(0, 3).map(e => e.outerHTML.slice(0, 120)).concat('scrolls sideways')""";

    private Fit() {}

    /** One line for each fault; leaves the window as wide as it was. */
    static List<String> faults(Page page) {
        var before = page.viewportSize();
        var faults = new ArrayList<String>();
        for (int width : new int[] {NARROWEST, WIDEST}) {
            page.setViewportSize(width, before.height);
            for (var fault : (List<?>) page.evaluate(STICKING_OUT)) {
                faults.add("%s: %d px wide: %s".formatted(page.url(), width, fault));
            }
            if (width == NARROWEST) {
                for (var fault : (List<?>) page.evaluate(TOO_SMALL, TAP)) {
                    faults.add("%s: too small for a thumb: %s".formatted(page.url(), fault));
                }
            }
        }
        page.setViewportSize(before.width, before.height);
        return faults;
    }
}
