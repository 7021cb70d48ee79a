package org.demebook.paper;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.File;
import java.util.List;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/**
 * Draws of SVG what a {@link QrCode} is made of: one path of boxes in the square of its viewBox, in black, as wide and high as its
 * width attribute says in pixels. All of SVG would
 * take a library of some megabytes.
 */
final class Boxes implements SVGDrawer {
    private static final Pattern BOX = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-\\d+z");

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext css, double width, double height, double dotsPerPixel) {
        var viewBox = svg.getAttribute("viewBox").split(" ");
        var path = (Element) svg.getElementsByTagName("path").item(0);
        return new Drawing(
                boxes(path.getAttribute("d")),
                Double.parseDouble(viewBox[2]),
                Integer.parseInt(svg.getAttribute("width")),
                dotsPerPixel);
    }

    private static Path2D boxes(String path) {
        var shape = new Path2D.Double();
        var box = BOX.matcher(path);
        while (box.find()) {
            int x = Integer.parseInt(box.group(1));
            int y = Integer.parseInt(box.group(2));
            int right = x + Integer.parseInt(box.group(3));
            shape.moveTo(x, y);
            shape.lineTo(right, y);
            shape.lineTo(right, y + 1);
            shape.lineTo(x, y + 1);
            shape.closePath();
        }
        return shape;
    }

    /**
     * @param units the side of the viewBox
     * @param sidePixels width and height on the page
     */
    private record Drawing(Path2D boxes, double units, int sidePixels, double dotsPerPixel) implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return (int) (sidePixels * dotsPerPixel);
        }

        @Override
        public int getIntrinsicHeight() {
            return getIntrinsicWidth();
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            device.drawWithGraphics((float) x, (float) y, sidePixels, sidePixels, graphics -> {
                graphics.setPaint(Color.BLACK);
                graphics.fill(AffineTransform.getScaleInstance(sidePixels / units, sidePixels / units)
                        .createTransformedShape(boxes));
            });
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> fonts, SharedContext shared) {}

    @Override
    public void addFontFile(File file, String family, Integer weight, FontStyle style) {}

    @Override
    public void close() {}
}
