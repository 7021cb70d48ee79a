package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;

/** Reads a picture as a person does: symbols with their text, and lines that begin or end at a symbol, from its markup alone. */
final class DrawnChart {
    private static final double NEAR = 0.25;

    final Document svg;
    final List<Animal> animals;
    final List<Bond> bonds;

    /** @param texts the room of each line of its text, as wide as DejaVu Sans has it, bold for the name */
    record Animal(Element element, String name, Element symbol, Rectangle2D bounds, List<Rectangle2D> texts) {
        Point2D head() {
            return new Point2D.Double(bounds.getCenterX(), bounds.getMinY());
        }

        Point2D foot() {
            return new Point2D.Double(bounds.getCenterX(), bounds.getMaxY());
        }

        boolean has(String symbolClass) {
            return classes(symbol).contains(symbolClass);
        }
    }

    record Stroke(List<Point2D> points, boolean candidate, boolean related) {
        List<Line2D> segments() {
            return IntStream.range(1, points.size())
                    .filter(it -> points.get(it).distance(points.get(it - 1)) > 0)
                    .<Line2D>mapToObj(it -> new Line2D.Double(points.get(it - 1), points.get(it)))
                    .toList();
        }
    }

    /** @param dot where the lines of parents and young meet */
    record Bond(Point2D dot, List<Parent> parents, List<Animal> young, List<Stroke> strokes) {}

    record Parent(Animal animal, boolean candidate, boolean related) {}

    private DrawnChart(Document svg) {
        this.svg = svg;
        this.animals = withClass(svg.getDocumentElement(), "chart-animal")
                .map(DrawnChart::animal)
                .toList();
        this.bonds = withClass(svg.getDocumentElement(), "chart-couple")
                .map(this::bond)
                .toList();
    }

    static DrawnChart of(List<Figure> figures) {
        return read(AncestryChart.draw(figures, new EnglishChart()).svg());
    }

    static DrawnChart read(String svg) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            return new DrawnChart(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))));
        } catch (Exception e) {
            throw new AssertionError("Not well-formed: " + svg, e);
        }
    }

    Animal named(String name) {
        return animals.stream().filter(it -> it.name().equals(name)).findFirst().orElseThrow();
    }

    Stream<Element> elements() {
        var all = svg.getElementsByTagName("*");
        return IntStream.range(0, all.getLength()).mapToObj(it -> (Element) all.item(it));
    }

    static List<String> classes(Element element) {
        return Arrays.asList(element.getAttribute("class").split(" "));
    }

    static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    static Stream<Element> withClass(Element within, String wanted) {
        var all = within.getElementsByTagName("*");
        return IntStream.range(0, all.getLength())
                .mapToObj(it -> (Element) all.item(it))
                .filter(it -> classes(it).contains(wanted));
    }

    private static Animal animal(Element element) {
        var symbol = withClass(element, "chart-symbol").findFirst().orElseThrow();
        var label = (Element) element.getElementsByTagName("svg").item(0);
        var texts = new ArrayList<Rectangle2D>();
        var names = new ArrayList<String>();
        for (Node child = label.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (!(child instanceof Element text)) {
                continue; // space between the lines
            }
            names.add(text.getTextContent());
            texts.add(new Rectangle2D.Double(
                    number(label, "x"),
                    number(label, "y") + number(text, "y") - 10,
                    Typeface.width(text.getTextContent(), classes(text).contains("chart-name")),
                    13));
        }
        return new Animal(element, names.get(0), symbol, bounds(symbol), texts);
    }

    private static Rectangle2D bounds(Element symbol) {
        return switch (symbol.getTagName()) {
            case "rect" ->
                new Rectangle2D.Double(
                        number(symbol, "x"), number(symbol, "y"), number(symbol, "width"), number(symbol, "height"));
            case "circle" -> {
                double radius = number(symbol, "r");
                yield new Rectangle2D.Double(
                        number(symbol, "cx") - radius, number(symbol, "cy") - radius, 2 * radius, 2 * radius);
            }
            default -> {
                var steps = Arrays.stream(symbol.getAttribute("d").split("[Mlz ]"))
                        .filter(it -> !it.isEmpty())
                        .mapToDouble(Double::parseDouble)
                        .toArray();
                yield new Rectangle2D.Double(steps[0] - steps[2], steps[1], 2 * steps[2], 2 * steps[3]);
            }
        };
    }

    private Bond bond(Element group) {
        var circle = withClass(group, "chart-dot").findFirst().orElseThrow();
        var dot = new Point2D.Double(number(circle, "cx"), number(circle, "cy"));
        var strokes = withClass(group, "chart-line").map(DrawnChart::stroke).toList();
        var parents = new ArrayList<Parent>();
        var young = new ArrayList<Animal>();
        for (var stroke : strokes) {
            var first = stroke.points().get(0);
            var last = stroke.points().get(stroke.points().size() - 1);
            var parent = at(first, Animal::foot);
            if (parent != null) {
                assertThat(last.distance(dot))
                        .as("the line of a parent ends at the dot")
                        .isLessThan(4);
                parents.add(new Parent(parent, stroke.candidate(), stroke.related()));
            } else {
                assertThat(first.distance(dot))
                        .as("the line of a young begins at the dot")
                        .isLessThan(4);
                young.add(Objects.requireNonNull(at(last, Animal::head), "a line that ends nowhere"));
            }
        }
        return new Bond(dot, parents, young, strokes);
    }

    private @Nullable Animal at(Point2D point, Function<Animal, Point2D> where) {
        return animals.stream()
                .filter(it -> where.apply(it).distance(point) < NEAR)
                .findFirst()
                .orElse(null);
    }

    private static Stroke stroke(Element path) {
        var numbers = Arrays.stream(path.getAttribute("d").substring(1).split("[L ]"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        var points = IntStream.range(0, numbers.length / 2)
                .<Point2D>mapToObj(it -> new Point2D.Double(numbers[2 * it], numbers[2 * it + 1]))
                .toList();
        var classes = classes(path);
        return new Stroke(points, classes.contains("chart-candidate"), classes.contains("chart-related"));
    }
}
