package io.github.roundstar.stars;

/**
 * A mark for each pixel of a plane. Each row starts at a word of its own, so that threads may set
 * marks of different rows at a time.
 */
final class Marks {
  private final int width;
  private final int rowWords;
  private final long[] words;

  Marks(int width, int height) {
    this.width = width;
    rowWords = (width + Long.SIZE - 1) / Long.SIZE;
    words = new long[rowWords * height];
  }

  void set(int x, int y) {
    words[y * rowWords + x / Long.SIZE] |= 1L << x;
  }

  /** Takes a mark away; whether there was one. */
  boolean clear(int x, int y) {
    int word = y * rowWords + x / Long.SIZE;
    long before = words[word];
    words[word] &= ~(1L << x);
    return words[word] != before;
  }

  /** The first marked pixel from one on, as x + y width; -1 if there is none. */
  int next(int pixel) {
    int word = pixel / width * rowWords + pixel % width / Long.SIZE;
    if (word >= words.length) {
      return -1;
    }
    long left = words[word] & -1L << pixel % width;
    while (left == 0) {
      if (++word == words.length) {
        return -1;
      }
      left = words[word];
    }
    int x = word % rowWords * Long.SIZE + Long.numberOfTrailingZeros(left);
    return word / rowWords * width + x;
  }
}
