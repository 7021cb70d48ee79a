package org.demebook.start;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * A plain picture of a snake on a towel, for the demo: a band in curves with saddles on it. The same name is always drawn
 * the same, two names differ in curve, colour and pattern.
 */
final class DrawnSnake {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;
    private static final int STEPS = 240;
    private static final float GIRTH = 34;

    private final Random random;
    private final double turns;
    private final double phase;
    private final double height;

    private DrawnSnake(String name) {
        random = new Random(name.hashCode());
        turns = 1.4 + random.nextDouble();
        phase = random.nextDouble() * Math.PI;
        height = 90 + random.nextInt(50);
    }

    /** @return a JPEG of 640 × 480 pixels */
    static byte[] jpeg(String name) throws IOException {
        var image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        var graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        new DrawnSnake(name).draw(graphics);
        graphics.dispose();
        var out = new ByteArrayOutputStream();
        if (!ImageIO.write(image, "jpeg", out)) {
            throw new IllegalStateException("This Java has no writer of JPEG");
        }
        return out.toByteArray();
    }

    private void draw(Graphics2D graphics) {
        graphics.setColor(new Color(228, 224, 214));
        graphics.fillRect(0, 0, WIDTH, HEIGHT);
        var skin = new Color(150 + random.nextInt(60), 120 + random.nextInt(40), 80 + random.nextInt(40));
        drawBody(graphics, skin);
        drawSaddles(graphics, skin.darker().darker());
        drawHead(graphics, skin);
    }

    private void drawBody(Graphics2D graphics, Color skin) {
        graphics.setColor(skin);
        // thick in the middle, thin at the tail
        for (int step = 1; step <= STEPS; step++) {
            var line = new Path2D.Double();
            line.moveTo(at(step - 1).getX(), at(step - 1).getY());
            line.lineTo(at(step).getX(), at(step).getY());
            graphics.setStroke(new BasicStroke(girth(step), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            graphics.draw(line);
        }
    }

    private void drawSaddles(Graphics2D graphics, Color dark) {
        graphics.setColor(dark);
        for (int step = STEPS / 10; step < STEPS; step += 9 + random.nextInt(4)) {
            fillCircle(graphics, at(step), girth(step) * (0.3 + 0.15 * random.nextDouble()));
        }
    }

    private void drawHead(Graphics2D graphics, Color skin) {
        graphics.setColor(skin);
        fillCircle(graphics, at(0), GIRTH * 0.6);
        graphics.setColor(Color.BLACK);
        fillCircle(graphics, new Point2D.Double(at(0).getX() - 4, at(0).getY() - 8), 3);
    }

    /** A point of the middle line; step 0 is the head. */
    private Point2D at(int step) {
        double along = (double) step / STEPS;
        return new Point2D.Double(
                60 + along * (WIDTH - 120), HEIGHT / 2.0 + height * Math.sin(phase + turns * 2 * Math.PI * along));
    }

    private static float girth(int step) {
        double along = (double) step / STEPS;
        return (float) (GIRTH * Math.min(1, 0.6 + 2 * along) * Math.min(1, 2.2 * (1 - along) + 0.15));
    }

    private static void fillCircle(Graphics2D graphics, Point2D middle, double radius) {
        graphics.fill(new Ellipse2D.Double(middle.getX() - radius, middle.getY() - radius, 2 * radius, 2 * radius));
    }
}
