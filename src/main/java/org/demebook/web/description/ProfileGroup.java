package org.demebook.web.description;

import java.util.List;

/** Figures of a profile that belong together. */
public record ProfileGroup(ProfileFigure.Group group, List<Line> lines) {
    /**
     * @param value with its unit
     * @param source empty where none is named
     */
    public record Line(ProfileFigure figure, String value, String source) {}
}
