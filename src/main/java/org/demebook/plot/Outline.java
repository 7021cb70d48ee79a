package org.demebook.plot;

/** A path of SVG, in absolute coordinates. */
final class Outline {
    private final StringBuilder path = new StringBuilder();

    static double tenths(double value) {
        return Math.rint(value * 10) / 10 + 0.0;
    }

    boolean isEmpty() {
        return path.isEmpty();
    }

    String path() {
        return path.toString();
    }

    Outline move(double x, double y) {
        return point('M', x, y);
    }

    Outline to(double x, double y) {
        return point('L', x, y);
    }

    Outline line(double fromX, double fromY, double toX, double toY) {
        return move(fromX, fromY).to(toX, toY);
    }

    Outline close() {
        path.append('Z');
        return this;
    }

    Outline rectangle(double x, double y, double width, double height) {
        move(x, y);
        path.append('H').append(number(x + width));
        path.append('V').append(number(y + height));
        path.append('H').append(number(x));
        return close();
    }

    Outline mark(Mark mark, double x, double y, double radius) {
        return switch (mark) {
            case CIRCLE -> circle(x, y, radius);
            case SQUARE -> rectangle(x - .88 * radius, y - .88 * radius, 1.76 * radius, 1.76 * radius);
            case TRIANGLE ->
                move(x, y - 1.15 * radius)
                        .to(x + 1.1 * radius, y + .85 * radius)
                        .to(x - 1.1 * radius, y + .85 * radius)
                        .close();
            case DIAMOND ->
                move(x, y - 1.25 * radius)
                        .to(x + 1.25 * radius, y)
                        .to(x, y + 1.25 * radius)
                        .to(x - 1.25 * radius, y)
                        .close();
            case CROSS ->
                line(x - radius, y - radius, x + radius, y + radius)
                        .line(x - radius, y + radius, x + radius, y - radius);
            case STROKE -> line(x, y - 1.4 * radius, x, y + 1.4 * radius);
        };
    }

    /** Lines of 45 degrees across a rectangle; those of neighbouring rectangles meet. */
    Outline hatch(double x, double y, double width, double height, double gap) {
        for (double sum = Math.ceil((x + y) / gap) * gap; sum < x + y + width + height; sum += gap) {
            double left = Math.max(x, sum - y - height);
            double right = Math.min(x + width, sum - y);
            if (right - left > .2) {
                line(left, sum - left, right, sum - right);
            }
        }
        return this;
    }

    private Outline circle(double x, double y, double radius) {
        move(x - radius, y);
        for (int side = 1; side >= -1; side -= 2) {
            path.append('A')
                    .append(number(radius))
                    .append(' ')
                    .append(number(radius))
                    .append(" 0 0 1 ");
            path.append(number(x + side * radius)).append(' ').append(number(y));
        }
        return close();
    }

    private Outline point(char command, double x, double y) {
        path.append(command).append(number(x)).append(' ').append(number(y));
        return this;
    }

    private static String number(double value) {
        double rounded = tenths(value);
        return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
    }
}
