package io.github.roundstar.formats;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Hashes and counts every byte that passes, and lets one look at the first two beforehand. */
final class HashedInput extends InputStream {
  private final InputStream in;
  private final MessageDigest digest;
  private final byte[] head;
  private int headRead;
  private long count;
  private String hash;

  HashedInput(InputStream in) throws IOException {
    this.in = in;
    this.head = in.readNBytes(2);
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
    digest.update(head);
    count = head.length;
  }

  boolean startsWith(int first, int second) {
    return head.length == 2 && (head[0] & 0xFF) == first && (head[1] & 0xFF) == second;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] target, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (headRead < head.length) {
      target[offset] = head[headRead++];
      return 1;
    }
    int got = in.read(target, offset, length);
    if (got > 0) {
      digest.update(target, offset, got);
      count += got;
    }
    return got;
  }

  void drain() throws IOException {
    byte[] rest = new byte[8192];
    while (hash == null && read(rest, 0, rest.length) >= 0) {
      continue;
    }
  }

  String sha256() throws IOException {
    drain();
    if (hash == null) {
      hash = HexFormat.of().formatHex(digest.digest());
    }
    return hash;
  }

  long count() {
    return count;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
