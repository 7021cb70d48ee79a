package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class DrawnSnakeTest {
    @Test
    void a_snake_is_drawn_the_same_again_and_each_one_otherwise() throws Exception {
        assertThat(DrawnSnake.jpeg("Lichen/2"))
                .isEqualTo(DrawnSnake.jpeg("Lichen/2"))
                .isNotEqualTo(DrawnSnake.jpeg("Lichen/5"));
        var picture = ImageIO.read(new ByteArrayInputStream(DrawnSnake.jpeg("Lichen/2")));
        assertThat(picture.getWidth()).isEqualTo(640);
        assertThat(picture.getHeight()).isEqualTo(480);
    }
}
