package org.demebook.plot;

import java.util.regex.Pattern;

/**
 * What a plot is called, in the reader's language.
 *
 * @param id unique on its page; letters, digits and hyphens, a letter first
 * @param title what is plotted, a few words; also the name of the picture for those who do not see it
 * @param description what the plot shows, in a sentence or two; read out, not printed
 * @param asTable the words by which the table beside the picture is opened
 * @param nothing what is said instead of a picture when there is nothing to draw
 */
public record Caption(String id, String title, String description, String asTable, String nothing) {
    private static final Pattern ID = Pattern.compile("[A-Za-z][A-Za-z0-9-]*");

    public Caption {
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("Not an id for a page: " + id);
        }
    }
}
