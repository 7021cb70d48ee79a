package org.demebook.chart;

import static org.demebook.chart.Markup.number;

import java.util.ArrayList;
import java.util.List;

/** The lines of couples: from their symbols to the dot where they meet, and from there to the symbols of their young. */
final class CoupleLines {
    private static final double BADGE_RADIUS = 6;

    private final List<Box> boxes;
    private final Places places;

    CoupleLines(List<Box> boxes, Places places) {
        this.boxes = boxes;
        this.places = places;
    }

    /** One group a couple: a halo that parts its lines from those they cross, the lines, the dot. */
    String of(Couple couple, Places.Bond bond) {
        var svg = new StringBuilder("<g class=\"chart-couple\">");
        bond.fromParents().forEach(line -> svg.append(drawn("chart-halo", line)));
        bond.toYoung().forEach(line -> svg.append(drawn("chart-halo", line)));
        var parents = couple.parents();
        for (int parent = 0; parent < parents.size(); parent++) {
            boolean sire = parent < couple.sires().size();
            svg.append(parentLine(
                    fromFoot(parents.get(parent), bond.fromParents().get(parent)),
                    sire && !couple.sireCertain(),
                    sire ? couple.related().get(parent) : couple.allRelated()));
        }
        for (int young = 0; young < couple.young().size(); young++) {
            svg.append(drawn(
                    "chart-line",
                    toHead(couple.young().get(young), bond.toYoung().get(young))));
        }
        svg.append("<circle class=\"chart-dot\" cx=\"%s\" cy=\"%s\" r=\"%s\"/>"
                .formatted(number(bond.dot().x()), number(bond.dot().y()), number(Box.DOT_RADIUS)));
        for (int sire = 0; sire < couple.sires().size() && !couple.sireCertain(); sire++) {
            svg.append(badge(bond.fromParents().get(sire).get(0)));
        }
        return svg.append("</g>").toString();
    }

    static String parentLine(List<Point> line, boolean candidate, boolean related) {
        var classes = "chart-line" + (candidate ? " chart-candidate" : "") + (related ? " chart-related" : "");
        // the second stroke, in the colour of the ground, leaves two lines of the first
        return drawn(classes, line) + (related ? drawn("chart-related-gap", line) : "");
    }

    /** A question mark on a line, below the box that it leaves. */
    static String badge(Point start) {
        double y = start.y() + BADGE_RADIUS + 1;
        return "<circle class=\"chart-badge\" cx=\"%s\" cy=\"%s\" r=\"%s\"/>"
                        .formatted(number(start.x()), number(y), number(BADGE_RADIUS))
                + "<text class=\"chart-query\" x=\"%s\" y=\"%s\" text-anchor=\"middle\" font-size=\"11\">?</text>"
                        .formatted(number(start.x()), number(y + 4));
    }

    /** From the foot of the symbol, through the strip below it, where its lines part. */
    private List<Point> fromFoot(int parent, List<Point> fromBox) {
        var points = new ArrayList<Point>();
        points.add(boxes.get(parent).foot(places.animals().get(parent)));
        points.addAll(fromBox);
        return points;
    }

    private List<Point> toHead(int young, List<Point> toBox) {
        var points = new ArrayList<>(toBox);
        points.add(boxes.get(young).head(places.animals().get(young)));
        return points;
    }

    private static String drawn(String classes, List<Point> line) {
        return "<path class=\"%s\" d=\"%s\"/>".formatted(classes, Markup.path(line));
    }
}
