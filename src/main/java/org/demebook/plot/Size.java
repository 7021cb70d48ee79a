package org.demebook.plot;

/** The two widths a plot is drawn for, in units: a phone's page and a desk's. */
enum Size {
    WIDE("wide", 640),
    NARROW("narrow", 300);

    final String css;
    final int width;

    Size(String css, int width) {
        this.css = css;
        this.width = width;
    }
}
