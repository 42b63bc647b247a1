package io.github.roundstar.report;

/** How exactly a page tells what gives the site away. */
public enum SiteDetail {
  /** Hour angles to a tenth of an hour, the refracted pole to a tenth of an arcminute. */
  ROUNDED(1),
  /** As exactly as they are known. */
  FULL(3);

  private final int decimals;

  SiteDetail(int decimals) {
    this.decimals = decimals;
  }

  int decimals() {
    return decimals;
  }
}
