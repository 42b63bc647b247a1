package io.github.roundstar.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.Context;
import org.thymeleaf.standard.StandardDialect;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.StringTemplateResolver;

/**
 * The template, its one style block and its one script. The policy in the page's head allows no
 * request, no style and no script but these, known by their hashes (Content Security Policy Level
 * 3, W3C).
 */
final class PageTemplate {
  /** Loaded on first use, then kept. */
  private static final class Loaded {
    static final String HTML = resource("night.html");
    static final String STYLE = resource("night.css");
    static final String SCRIPT = resource("night.js");
    static final String POLICY =
        "default-src 'none'; style-src 'sha256-"
            + sha256(STYLE)
            + "'; script-src 'sha256-"
            + sha256(SCRIPT)
            + "'; base-uri 'none'; form-action 'none'";
    static final TemplateEngine ENGINE = engine();
  }

  private static final Pattern UNPRINTABLE =
      Pattern.compile("[^\\x09\\x0A\\x0D\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]");

  private PageTemplate() {}

  static String fill(Page page) {
    return printable(
        Loaded.ENGINE.process(
            Loaded.HTML,
            new Context(
                Locale.ROOT,
                Map.of(
                    "page", PageModel.of(page),
                    "style", Loaded.STYLE,
                    "script", Loaded.SCRIPT,
                    "policy", Loaded.POLICY))));
  }

  /**
   * With a replacement character for each that no document may hold: names and notes of a log may
   * have control characters in them (XML 1.0, production 2).
   */
  private static String printable(String html) {
    return UNPRINTABLE.matcher(html).replaceAll("\uFFFD");
  }

  private static TemplateEngine engine() {
    StringTemplateResolver resolver = new StringTemplateResolver();
    resolver.setTemplateMode(TemplateMode.HTML);
    resolver.setCacheable(true);
    StandardDialect dialect = new StandardDialect();
    // The default one starts a JSON mapper, for scripts made from data, which this page does not
    // have.
    dialect.setJavaScriptSerializer(
        (value, writer) -> {
          throw new UnsupportedOperationException("a page whose script is fixed");
        });
    TemplateEngine engine = new TemplateEngine();
    engine.setDialect(dialect);
    engine.setTemplateResolver(resolver);
    return engine;
  }

  private static String resource(String name) {
    try (InputStream in = PageTemplate.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String sha256(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
