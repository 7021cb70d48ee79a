package org.demebook.web;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * At most 256 colours for a picture: boxes of colours are halved at their median, the widest box first, and each box gives
 * its mean (median cut; P. Heckbert, Color image quantization for frame buffer display, SIGGRAPH 1982, from memory). The same
 * picture gives the same palette.
 */
final class Palette {
    private static final int COLOURS = 256;
    private static final int[] SHIFTS = {16, 8, 0};

    private final int[] colours;
    private final Map<Integer, Integer> nearest = new HashMap<>();

    private Palette(int[] colours) {
        this.colours = colours;
    }

    static Palette of(BufferedImage picture) {
        var all = pixels(picture);
        var distinct = Arrays.stream(all).distinct().sorted().toArray();
        List<int[]> boxes = new ArrayList<>(List.of(distinct));
        while (boxes.size() < COLOURS) {
            var widest = boxes.stream()
                    .filter(box -> box.length > 1)
                    .max(Comparator.comparingInt(box -> width(box, widestChannel(box))));
            if (widest.isEmpty()) {
                break;
            }
            halve(boxes, widest.get());
        }
        return new Palette(boxes.stream().mapToInt(Palette::mean).toArray());
    }

    private static void halve(List<int[]> boxes, int[] box) {
        int shift = widestChannel(box);
        var sorted = Arrays.stream(box)
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(colour -> colour >> shift & 0xff)
                        .thenComparing(Comparator.naturalOrder()))
                .mapToInt(Integer::intValue)
                .toArray();
        int at = boxes.indexOf(box);
        boxes.set(at, Arrays.copyOfRange(sorted, 0, sorted.length / 2));
        boxes.add(Arrays.copyOfRange(sorted, sorted.length / 2, sorted.length));
    }

    private static int widestChannel(int[] box) {
        return Arrays.stream(SHIFTS)
                .boxed()
                .max(Comparator.comparingInt(shift -> width(box, shift)))
                .orElseThrow();
    }

    private static int width(int[] box, int shift) {
        var channel = Arrays.stream(box).map(colour -> colour >> shift & 0xff).summaryStatistics();
        return channel.getMax() - channel.getMin();
    }

    private static int mean(int[] box) {
        return IntStream.of(SHIFTS)
                .map(shift -> (int) Math.round(Arrays.stream(box)
                                .map(colour -> colour >> shift & 0xff)
                                .average()
                                .orElseThrow())
                        << shift)
                .sum();
    }

    private static int[] pixels(BufferedImage picture) {
        return Arrays.stream(picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth()))
                .map(colour -> colour & 0xffffff)
                .toArray();
    }

    BufferedImage applyTo(BufferedImage picture) {
        var model = new IndexColorModel(8, colours.length, colours, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE);
        var indexed =
                new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_INDEXED, model);
        var indices = Arrays.stream(pixels(picture)).map(this::index).toArray();
        indexed.getRaster().setPixels(0, 0, picture.getWidth(), picture.getHeight(), indices);
        return indexed;
    }

    private int index(int colour) {
        return nearest.computeIfAbsent(colour, sought -> IntStream.range(0, colours.length)
                .boxed()
                .min(Comparator.comparingInt(index -> distance(sought, colours[index])))
                .orElseThrow());
    }

    private static int distance(int one, int other) {
        return Arrays.stream(SHIFTS)
                .map(shift -> (one >> shift & 0xff) - (other >> shift & 0xff))
                .map(difference -> difference * difference)
                .sum();
    }
}
