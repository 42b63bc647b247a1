package io.github.roundstar.stars;

import java.util.Locale;

/** Why a bright spot was not measured as a star. */
public enum Rejection {
  /** It touches the edge, or comes too close to it. */
  AT_EDGE,
  /** Its top is flat. */
  SATURATED,
  /** It has a second peak, or another object beside it. */
  BLENDED,
  /** It is sharper than any star of the image: a hot pixel or a cosmic ray. */
  HOT_PIXEL,
  /** No Gaussian fits, or its size is far from that of the other stars. */
  NOT_STELLAR,
  /** Too faint to tell its shape. */
  FAINT;

  /** In words. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
