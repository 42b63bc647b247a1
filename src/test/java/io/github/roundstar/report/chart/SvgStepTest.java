package io.github.roundstar.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** What leaves the SVG step needs no style attribute and follows the page's palette. */
class SvgStepTest {
  private static final Sheet SHEET =
      new Sheet("id", 1200, 300, "A <title>", "Some \"words\" & more");

  @Test
  void stylesBecomePresentationAttributes() {
    String svg =
        step(
            "<g style='stroke-width:0.8;stroke:rgb(143,82,0);stroke-opacity:0.25098;"
                + "stroke-linecap:round;stroke-miterlimit:10;fill:none'><path d='M1,2L3,4'/></g>");

    assertThat(svg)
        .contains(
            "<path d=\"M1,2L3,4\" stroke-width=\"0.8\" stroke=\"var(--ra)\""
                + " stroke-opacity=\"0.25\" stroke-linecap=\"round\" fill=\"none\"/>")
        .doesNotContain("style", "<g", "rgb(");
  }

  @Test
  void textLeavesItsFontToThePage() {
    String svg =
        step(
            "<g><text x='1' y='2' style='fill: rgb(29,27,24); fill-opacity: 1.0; font-family:"
                + " \"Liberation Sans\"; font-size: 13px;' clip-path='url(#c)'>a &lt; b</text></g>");

    assertThat(svg)
        .contains(
            "<text x=\"1\" y=\"2\" fill=\"var(--ink)\" textLength=\"35\" lengthAdjust=\"spacingAndGlyphs\">a &lt; b</text>");
  }

  @Test
  void strokesWithoutLengthBecomeDots() {
    assertThat(step("<path d='M1,2L1,2M1,2L1,23M5.5,6L5.5,6'/>"))
        .contains("d=\"M1,2h0M1,2L1,23M5.5,6h0\"");
  }

  @Test
  void clipsAreLeftOut() {
    String svg = step("<defs><clipPath id='c'><path d='M0,0Z'/></clipPath></defs><path d='M1,1'/>");

    assertThat(svg).doesNotContain("clip", "M0,0Z").contains("M1,1");
  }

  @Test
  void titleAndDescriptionAreTextAndNamed() {
    assertThat(step(""))
        .contains("role=\"img\" aria-labelledby=\"id-t id-d\"")
        .contains("<title id=\"id-t\">A &lt;title&gt;</title>")
        .contains("<desc id=\"id-d\">Some \"words\" &amp; more</desc>")
        .contains("viewBox=\"0 0 1200 300\"");
  }

  @Test
  void coloursOutsideThePaletteAreRefused() {
    assertThatThrownBy(() -> step("<path d='M0,0' style='fill:rgb(0,0,255)'/>"))
        .hasMessageContaining("rgb(0,0,255)");
  }

  @Test
  void coordinatesHaveAtMostTwoDecimals() {
    assertThat(SvgStep.decimals(12.3456)).isEqualTo("12.3");
    assertThat(SvgStep.decimals(12.3)).isEqualTo("12.3");
    assertThat(SvgStep.decimals(-0.004)).isEqualTo("0");
    assertThat(SvgStep.decimals(-2.05)).isEqualTo("-2.05");
    assertThat(SvgStep.decimals(7)).isEqualTo("7");
  }

  private static String step(String content) {
    return SvgStep.of(
            "<svg width='1'>" + content + "</svg>", SHEET, text -> 7 * text.length(), Map.of())
        .markup();
  }
}
