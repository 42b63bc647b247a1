package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks are those of the JDK's bit set, whatever the width. */
class MarksTest {
  private static final int HEIGHT = 7;

  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {1, 63, 64, 65, 200})
  void marksAreFoundInOrderAndTakenAwayOnce(int width) {
    Marks marks = new Marks(width, HEIGHT);
    BitSet expected = new BitSet();
    Random random = new Random(width);
    for (int i = 0; i < width; i++) {
      int at = random.nextInt(width * HEIGHT);
      expected.set(at);
      marks.set(at % width, at / width);
    }
    for (int from = 0; from < width * HEIGHT; from++) {
      assertThat(marks.next(from)).isEqualTo(expected.nextSetBit(from));
    }
    assertThat(marks.next(width * HEIGHT)).isEqualTo(-1);
    for (int at = 0; at < width * HEIGHT; at++) {
      assertThat(marks.clear(at % width, at / width)).isEqualTo(expected.get(at));
    }
    assertThat(marks.next(0)).isEqualTo(-1);
  }
}
