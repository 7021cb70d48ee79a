package org.demebook.chart;

import java.util.List;

/**
 * A chart, ready for a page.
 *
 * @param svg a complete {@code <svg>} element; it is marked up with classes alone (pages/chart.css gives them their look), its
 *     animals with a link can be reached with the keyboard. It holds two ids, {@code ancestry-chart-title} and
 *     {@code ancestry-chart-description}: one chart a page
 * @param widthPixels its natural width; a page lets it scroll within a box
 * @param heightPixels its natural height
 * @param legend the symbols and lines that occur in it, with their words
 * @param outline the same in words, for who does not see the picture
 */
public record Drawing(String svg, int widthPixels, int heightPixels, List<LegendEntry> legend, Outline outline) {
    /**
     * What a symbol or line means.
     *
     * @param svg a small picture, hidden from assistive technology: the words say it
     * @param words its meaning
     */
    public record LegendEntry(String svg, String words) {}

    public Drawing {
        legend = List.copyOf(legend);
    }
}
