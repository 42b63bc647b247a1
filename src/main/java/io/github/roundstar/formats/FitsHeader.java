package io.github.roundstar.formats;

import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCard;

/**
 * Keywords of a FITS file: those of its first image, and behind them those of its first header.
 * Knows no keyword's meaning.
 *
 * @see "FITS Standard 4.0, section 4"
 */
public final class FitsHeader {
  private final Map<String, String> values = new HashMap<>();
  private final Map<String, String> comments = new HashMap<>();

  /** The cards of headers; of a keyword that several have, the first counts. */
  FitsHeader(List<Header> headers) {
    for (Header header : headers) {
      for (Iterator<HeaderCard> cards = header.iterator(); cards.hasNext(); ) {
        HeaderCard card = cards.next();
        if (card != null && card.isKeyValuePair() && card.getValue() != null) {
          String keyword = card.getKey().toUpperCase(Locale.ROOT);
          if (values.putIfAbsent(keyword, card.getValue().strip()) == null) {
            comments.put(keyword, card.getComment() == null ? "" : card.getComment());
          }
        }
      }
    }
  }

  /** Value of the first of the keywords that is there and not empty, as it stands. */
  public Optional<String> text(String... keywords) {
    for (String keyword : keywords) {
      String value = values.get(keyword);
      if (value != null && !value.isEmpty()) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }

  /** Comment beside a keyword; empty without one. */
  public String comment(String keyword) {
    return comments.getOrDefault(keyword, "");
  }

  /** Value of the first of the keywords that holds a finite number; FITS allows D for E. */
  public OptionalDouble number(String... keywords) {
    for (String keyword : keywords) {
      String value = values.get(keyword);
      if (value == null) {
        continue;
      }
      try {
        double number = Double.parseDouble(value.replace('D', 'E').replace('d', 'e'));
        if (Double.isFinite(number)) {
          return OptionalDouble.of(number);
        }
      } catch (NumberFormatException e) {
        continue; // text under a keyword that others use for a number
      }
    }
    return OptionalDouble.empty();
  }
}
