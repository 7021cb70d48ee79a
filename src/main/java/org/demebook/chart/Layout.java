package org.demebook.chart;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.elk.alg.layered.LayeredLayoutProvider;
import org.eclipse.elk.alg.layered.options.LayeredMetaDataProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.LayeringStrategy;
import org.eclipse.elk.alg.layered.options.NodePlacementStrategy;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.NodeLabelPlacement;
import org.eclipse.elk.core.options.PortAlignment;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/**
 * Where everything of a chart stands, found by the layered algorithm of the Eclipse Layout Kernel.
 *
 * <p>Animals and couples are its nodes. An animal leaves by a port of its own for each couple that it belongs to, a couple has one
 * port for its parents and one for its young: so lines of different couples may cross and never run on one another. (Merging
 * the lines of an animal looks calmer, and then one couple's young can be read as another's.)
 */
final class Layout {
    private static final double ROW_PITCH = 1000;

    private final List<Couple> couples;
    private final int[] rows;
    private final ElkNode graph = ElkGraphUtil.createGraph();
    private final List<ElkNode> animals = new ArrayList<>();
    private final List<ElkPort> heads = new ArrayList<>();
    private final List<Bond> bonds = new ArrayList<>();

    private record Bond(ElkNode node, List<ElkEdge> fromParents, List<ElkEdge> toYoung) {}

    static {
        LayoutMetaDataService.getInstance().registerLayoutMetaDataProviders(new LayeredMetaDataProvider());
    }

    private Layout(List<Couple> couples, int[] rows) {
        this.couples = couples;
        this.rows = rows;
    }

    /**
     * The same boxes, couples and rows give the same places.
     *
     * @param boxes the room that each animal takes
     * @param rows the row of each animal
     */
    static Places of(List<Box> boxes, List<Couple> couples, int[] rows) {
        var layout = new Layout(couples, rows);
        layout.configure();
        for (int animal = 0; animal < boxes.size(); animal++) {
            layout.addAnimal(boxes.get(animal), rows[animal]);
        }
        couples.forEach(layout::addCouple);
        new LayeredLayoutProvider().layout(layout.graph, new BasicProgressMonitor());
        return layout.places();
    }

    private void configure() {
        graph.setProperty(CoreOptions.DIRECTION, Direction.DOWN);
        graph.setProperty(CoreOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
        graph.setProperty(CoreOptions.SEPARATE_CONNECTED_COMPONENTS, false);
        graph.setProperty(CoreOptions.RANDOM_SEED, 1);
        graph.setProperty(CoreOptions.PADDING, new ElkPadding(12));
        graph.setProperty(LayeredOptions.LAYERING_STRATEGY, LayeringStrategy.INTERACTIVE);
        graph.setProperty(LayeredOptions.NODE_PLACEMENT_STRATEGY, NodePlacementStrategy.NETWORK_SIMPLEX);
        graph.setProperty(LayeredOptions.THOROUGHNESS, 10);
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE, 16.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE, 12.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_EDGE, 12.0);
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, 18.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, 16.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_EDGE_BETWEEN_LAYERS, 9.0);
    }

    private void addAnimal(Box box, int row) {
        var node = node(box.portsWidth(), box.height(), 2 * row);
        keepFree(node, box.right(), box.height(), NodeLabelPlacement.H_RIGHT);
        keepFree(node, box.left(), box.height(), NodeLabelPlacement.H_LEFT);
        animals.add(node);
        heads.add(port(node, PortSide.NORTH));
    }

    private static void keepFree(ElkNode node, double width, double height, NodeLabelPlacement side) {
        if (width == 0) {
            return;
        }
        var label = ElkGraphUtil.createLabel("room", node); // a label without text is passed over
        label.setDimensions(width, height);
        label.setProperty(
                CoreOptions.NODE_LABELS_PLACEMENT,
                EnumSet.of(NodeLabelPlacement.OUTSIDE, side, NodeLabelPlacement.V_CENTER));
    }

    private void addCouple(Couple couple) {
        int lowestParent =
                couple.parents().stream().mapToInt(it -> rows[it]).max().orElseThrow();
        var dot = node(2 * Box.DOT_RADIUS, 2 * Box.DOT_RADIUS, 2 * lowestParent + 1);
        var in = port(dot, PortSide.NORTH);
        var out = port(dot, PortSide.SOUTH);
        bonds.add(new Bond(
                dot,
                couple.parents().stream()
                        .map(parent -> edge(port(animals.get(parent), PortSide.SOUTH), in))
                        .toList(),
                couple.young().stream()
                        .map(young -> edge(out, heads.get(young)))
                        .toList()));
    }

    private ElkNode node(double width, double height, int layer) {
        var node = ElkGraphUtil.createNode(graph);
        node.setDimensions(width, height);
        node.setY(layer * ROW_PITCH); // interactive layering puts nodes by where they already are
        node.setProperty(CoreOptions.PORT_CONSTRAINTS, PortConstraints.FIXED_SIDE);
        node.setProperty(CoreOptions.PORT_ALIGNMENT_DEFAULT, PortAlignment.CENTER);
        node.setProperty(CoreOptions.SPACING_PORT_PORT, Box.PORT_PITCH);
        node.setProperty(CoreOptions.SPACING_LABEL_NODE, 0.0);
        return node;
    }

    private static ElkPort port(ElkNode node, PortSide side) {
        var port = ElkGraphUtil.createPort(node);
        port.setProperty(CoreOptions.PORT_SIDE, side);
        return port;
    }

    private static ElkEdge edge(ElkPort from, ElkPort to) {
        return ElkGraphUtil.createSimpleEdge(from, to);
    }

    private Places places() {
        return new Places(
                graph.getWidth(),
                graph.getHeight(),
                animals.stream().map(it -> new Point(it.getX(), it.getY())).toList(),
                bonds.stream()
                        .map(bond -> new Places.Bond(
                                new Point(
                                        bond.node().getX() + Box.DOT_RADIUS,
                                        bond.node().getY() + Box.DOT_RADIUS),
                                bond.fromParents().stream().map(Layout::line).toList(),
                                bond.toYoung().stream().map(Layout::line).toList()))
                        .toList());
    }

    private static List<Point> line(ElkEdge edge) {
        var section = edge.getSections().get(0);
        return Stream.of(
                        Stream.of(new Point(section.getStartX(), section.getStartY())),
                        section.getBendPoints().stream().map(bend -> new Point(bend.getX(), bend.getY())),
                        Stream.of(new Point(section.getEndX(), section.getEndY())))
                .flatMap(points -> points)
                .toList();
    }
}
